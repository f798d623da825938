// A picture from the camera, scaled on the phone before it is sent, with a caption if wanted.
import { byId, newId, trouble } from "./dom.js";

const longestSide = 1600;
const quality = 0.8;

async function scaled(file) {
  const image = await createImageBitmap(file, { imageOrientation: "from-image" });
  const scale = Math.min(1, longestSide / Math.max(image.width, image.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(image.width * scale));
  canvas.height = Math.max(1, Math.round(image.height * scale));
  canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise(resolve => canvas.toBlob(resolve, "image/jpeg", quality));
}

/** Calls keep({ id, caption, blob, image }) for each picture the technician keeps. */
export function startPictures(keep) {
  const camera = byId("camera");
  const dialog = byId("caption");
  let taken = null;

  byId("picture").addEventListener("click", () => camera.click());
  camera.addEventListener("change", async () => {
    const [file] = camera.files;
    camera.value = "";
    if (!file) return;
    try {
      const blob = await scaled(file);
      taken = { id: newId(), blob, image: URL.createObjectURL(blob) };
    } catch {
      trouble("That file is no picture this phone can read. Take it again, as JPEG or PNG.");
      return;
    }
    trouble("");
    byId("caption-preview").src = taken.image;
    byId("caption-text").value = "";
    dialog.showModal();
    byId("caption-text").focus();
  });
  byId("caption-form").addEventListener("submit", () => {
    keep({ ...taken, caption: byId("caption-text").value.trim() });
    taken = null;
  });
}
