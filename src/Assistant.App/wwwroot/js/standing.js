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

export function showVerdict(verdicts) {
  const field = byId("verdict");
  const wasOpen = field.querySelector("details")?.open ?? false;
  const [first, ...others] = verdicts.filter(v => v.code !== "not-enough-evidence");
  if (!first) {
    field.replaceChildren();
    return;
  }
  const details = make("details", { open: wasOpen },
    make("summary", {}, ...fault(first)),
    ...reasons("Because", first.because),
    ...reasons("Against it", first.against));
  if (others.length > 0) {
    details.append(make("h3", { textContent: "Not excluded either" }),
      make("ul", {}, ...others.map(v => make("li", { textContent: `${v.name}: ${v.standing}` }))));
  }
  field.replaceChildren(details);
}

export function showReadings(readings) {
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
