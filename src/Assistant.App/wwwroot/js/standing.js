// What is known now: the verdict with its reasons folded, and the readings by place with their age.
import { age, byId, make } from "./dom.js";

function reasons(title, texts) {
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

export function showReadings(readings, verdicts) {
  byId("readings-count").textContent = readings.length > 0 ? String(readings.length) : "";
  const list = byId("readings-list");
  if (readings.length === 0) {
    list.replaceChildren(make("p", { textContent: "Nothing has been read yet." }));
    return;
  }
  const places = Map.groupBy ? Map.groupBy(readings, r => r.place) : grouped(readings);
  list.replaceChildren(...[...places].map(([place, here]) => make("section", { className: "places" },
    make("h3", { textContent: place }),
    make("dl", {}, ...here.flatMap(entry)))));
  list.append(make("section", { className: "places" },
    ...reasons("What it may be, as far as this goes", verdicts.map(v => `${v.name}: ${v.standing}`))));
}

function entry(reading) {
  const name = make("dt", { textContent: reading.label + (reading.doubted ? " (questioned)" : "") });
  const value = make("dd", {}, reading.value);
  if (reading.at) {
    const when = make("span", { className: "age", textContent: age(reading.at) });
    when.dataset.at = reading.at;
    value.append(when);
  }
  return [name, value];
}

function grouped(readings) {
  const places = new Map();
  for (const reading of readings) {
    places.set(reading.place, [...(places.get(reading.place) ?? []), reading]);
  }
  return places;
}

setInterval(() => {
  for (const when of document.querySelectorAll(".age[data-at]")) when.textContent = age(when.dataset.at);
}, 30000);
