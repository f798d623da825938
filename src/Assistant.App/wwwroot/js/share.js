// Handing the visit over: its spoken code, its address as a link, and as a code to point another phone at.
import * as api from "./api.js";
import { byId, show } from "./dom.js";

export function openShare(view) {
  const link = `${location.origin}/?visit=${encodeURIComponent(view.id)}`;
  byId("share-link").value = link;
  show(byId("share-local"), ["127.0.0.1", "localhost", "[::1]"].includes(location.hostname));
  byId("share-code").src = `/visits/${encodeURIComponent(view.id)}/link.svg`;
  show(byId("share-send"), Boolean(navigator.share));
  byId("share-send").onclick = () => navigator.share({ title: `Visit: ${view.site}`, url: link }).catch(() => {});
  byId("share-copy").onclick = async () => {
    await navigator.clipboard.writeText(link).catch(() => byId("share-link").select());
    byId("share-copy").textContent = "Copied";
  };
  byId("share-spoken").textContent = "";
  api.share(view.id).then(({ code }) => { byId("share-spoken").textContent = code; }, () => { byId("share-spoken").textContent = "not without a signal"; });
  byId("share-copy").textContent = "Copy the link";
  byId("share").showModal();
}
