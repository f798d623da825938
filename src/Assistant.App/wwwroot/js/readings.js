// The readings by place, each with its age and who took it; what follows from them beside what it rests on. A tap corrects one.
import { age, byId, make } from "./dom.js";
import { reasons } from "./standing.js";

function when(at) {
  const span = make("span", { textContent: age(at) });
  span.dataset.at = at;
  return span;
}

function taken({ at, by }) {
  return at ? make("span", { className: "age" }, when(at), by ? `, ${by}` : "") : null;
}

/** One reading: press it to correct it. */
function row(reading, derived, correct) {
  const label = reading.label + (reading.doubted ? " (questioned)" : "");
  const others = reading.others.map(other => make("span", { className: "age", textContent: `also ${other.value}, ${other.by}, ${age(other.at)}` }));
  const button = make("button", { type: "button", className: "reading" },
    make("span", { className: "label", textContent: label }),
    make("span", { className: "value", textContent: reading.value }),
    taken(reading), ...others);
  button.addEventListener("click", () => correct(reading));
  button.disabled = reading.says === null;
  return make("li", {}, button, ...derived.map(d => make("p", { className: "derived", textContent: d.text })));
}

/** A derived value stands under the last of the readings it rests on. */
function derivedByFact(view, shown) {
  const byFact = new Map();
  for (const derived of view.derived) {
    const last = shown.filter(r => derived.from.includes(r.fact)).pop()?.fact ?? "";
    byFact.set(last, [...(byFact.get(last) ?? []), derived]);
  }
  return byFact;
}

export function showReadings(view, correct) {
  const list = byId("readings-list");
  const { readings, verdicts } = view;
  const places = new Map();
  for (const reading of readings) places.set(reading.place, [...(places.get(reading.place) ?? []), reading]);
  const inOrder = [...places].sort(([, a], [, b]) => Number(a[0].at === null) - Number(b[0].at === null));
  const derived = derivedByFact(view, inOrder.flatMap(([, here]) => here));
  list.replaceChildren(...inOrder.map(([place, here]) => make("section", { className: "places" },
    make("h3", { textContent: place }),
    make("ul", { className: "plain-list" }, ...here.map(reading => row(reading, derived.get(reading.fact) ?? [], correct))))));
  if (readings.length === 0) list.append(make("p", { textContent: "Nothing has been read yet." }));
  list.append(make("section", { className: "places" },
    ...reasons("What it may be, as far as this goes", verdicts.map(v => `${v.name}: ${v.standing}`))));
}
