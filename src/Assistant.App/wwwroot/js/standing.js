// The verdict as it stands, with its reasons folded.
import { age, byId, make } from "./dom.js";

export function reasons(title, texts) {
  if (texts.length === 0) return [];
  return [make("h3", { textContent: title }), make("ul", {}, ...texts.map(text => make("li", { textContent: text })))];
}

function fault(verdict) {
  return [
    make("span", { className: `standing ${verdict.standing}`, textContent: verdict.standing }),
    make("span", { className: "name", textContent: verdict.name }),
  ];
}

/** The leading fault once it is likely or established; what is only possible stands with the readings. */
export function showVerdict(verdicts) {
  const field = byId("verdict");
  const wasOpen = field.querySelector("details")?.open ?? false;
  const [first, ...others] = verdicts;
  if (!first || first.standing === "possible") {
    field.replaceChildren();
    return;
  }
  const grounds = make("div", { className: "grounds", tabIndex: 0 },
    ...reasons("Because", first.because),
    ...reasons("Against it", first.against),
    ...reasons("Not excluded either", others.map(v => `${v.name}: ${v.standing}`)));
  field.replaceChildren(make("details", { open: wasOpen }, make("summary", {}, ...fault(first)), grounds));
}

/** How many readings there are, on the button that shows them. */
export function showCount(readings) {
  byId("readings-count").textContent = readings.length > 0 ? String(readings.length) : "";
}

setInterval(() => {
  for (const when of document.querySelectorAll("[data-at]")) when.textContent = age(when.dataset.at);
}, 30000);
