// A picture from the camera, scaled on the phone before it is sent, with a caption; one tap for those that are often wanted.
import { byId, make, newId, trouble } from "./dom.js";

const longestSide = 1600;
const quality = 0.8;
const captions = ["Nameplate", "Bubbles prove the leak", "Coil ice", "Condenser face", "Gauges", "The repair"];

async function scaled(file) {
  const image = await createImageBitmap(file, { imageOrientation: "from-image" });
  const scale = Math.min(1, longestSide / Math.max(image.width, image.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(image.width * scale));
  canvas.height = Math.max(1, Math.round(image.height * scale));
  canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise(resolve => canvas.toBlob(resolve, "image/jpeg", quality));
}

let taken = null;
let keepPicture = null;

byId("caption-choices").append(...captions.map(caption => {
  const button = make("button", { type: "button", textContent: caption });
  button.addEventListener("click", () => { byId("caption-text").value = caption; });
  return button;
}));
byId("caption-form").addEventListener("submit", () => {
  if (taken) keepPicture({ ...taken, caption: byId("caption-text").value.trim() });
  taken = null;
});

/** Scales the file, asks what it shows, and calls keep({ id, caption, blob, image }) if the technician keeps it. */
export async function captionPicture(file, keep) {
  keepPicture = keep;
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
  byId("caption").showModal();
}
