// One reading entered by its name: to correct one, or to note one that is not asked for now. It goes out in words the program understands.
import { age, byId, make, show, trouble } from "./dom.js";
import { factsFor } from "./facts.js";
import { Pad } from "./pad.js";

let pad = null;
let now = null;
let send = null;

function start() {
  if (pad) return;
  pad = new Pad(byId("entry-form"));
  byId("entry-form").addEventListener("submit", event => {
    event.preventDefault();
    if (pad.text()) finish(`${now.says} ${pad.text()}`);
  });
}

function finish(text) {
  byId("entry").close();
  send({ text, fact: now.fact });
}

/** Opens the form for a fact; say({ text, fact }) is called with what is to be said. */
export function enterReading(reading, say) {
  start();
  [now, send] = [reading, say];
  byId("entry-title").textContent = reading.label;
  const known = byId("entry-now");
  show(known, Boolean(reading.value));
  known.textContent = reading.value ? `Now ${reading.value}${reading.at ? `, ${age(reading.at)}` : ""}${reading.by ? ` by ${reading.by}` : ""}. What you enter counts from then on; the old one stays on record.` : "";
  const choices = Object.entries(reading.choices);
  byId("entry-choices").replaceChildren(...choices.map(([choice, text]) => {
    const button = make("button", { type: "button", textContent: choice.replaceAll("-", " ") });
    button.addEventListener("click", () => finish(text));
    return button;
  }));
  show(byId("entry-form"), choices.length === 0);
  pad.clear();
  pad.ask(reading.units);
  byId("entry").showModal();
}

/** Offers every fact by place; the list stays on the phone. */
export async function chooseReading(view, say) {
  const facts = await factsFor(view.units);
  if (!facts) {
    trouble("The list of readings comes with the first signal. Until then say it in your words.");
    return;
  }
  trouble("");
  const places = new Map();
  for (const fact of facts) places.set(fact.place, [...(places.get(fact.place) ?? []), fact]);
  const known = new Map(view.readings.map(r => [r.fact, r]));
  byId("facts-list").replaceChildren(...[...places].map(([place, here]) => make("section", { className: "places" },
    make("h3", { textContent: place }),
    make("div", { className: "choices" }, ...here.map(fact => {
      const button = make("button", { type: "button", textContent: fact.label });
      button.addEventListener("click", () => {
        byId("facts").close();
        enterReading({ ...fact, value: known.get(fact.fact)?.value, at: known.get(fact.fact)?.at, by: known.get(fact.fact)?.by }, say);
      });
      return button;
    })))));
  byId("facts").showModal();
}
