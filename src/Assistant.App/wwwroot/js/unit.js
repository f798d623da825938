// One unit, as its label opens it: what is known of it, its visits, and one press to begin or to carry on.
import * as api from "./api.js";
import { age, byId, make, show, trouble } from "./dom.js";
import { keep, recall } from "./kept.js";

function visitRow(visit, enter) {
  const button = make("button", { type: "button" }, `${visit.closedAt ? "Visit" : "Open visit"} of ${new Date(visit.openedAt).toLocaleDateString()}`,
    make("span", { className: "small", textContent: visit.closedAt ? `closed ${age(visit.closedAt)}` : `opened ${age(visit.openedAt)}` }));
  button.addEventListener("click", () => enter(visit.id));
  return make("li", {}, button, make("a", { className: "press", href: `/visits/${encodeURIComponent(visit.id)}/report.html`, target: "_blank", rel: "noopener", textContent: "Report" }));
}

/** handlers: enter(visitId), open({ assetId }), missing(line). */
export async function showUnit(id, handlers) {
  for (const screen of ["start", "visit"]) show(byId(screen), false);
  show(byId("unit"), true);
  const key = `unit:${id}`;
  let unit;
  try {
    unit = await api.unit(id);
    keep(key, unit);
    trouble("");
  } catch (failure) {
    unit = await recall(key);
    if (!unit) return handlers.missing(failure.message);
    trouble(`${failure.message} This is what the phone last saw of the unit.`);
  }
  document.title = `${unit.site} - Coldwalk`;
  byId("unit-site").textContent = unit.site;
  byId("unit-name").textContent = unit.unit;
  const open = unit.visits.find(v => !v.closedAt);
  const begin = byId("unit-begin");
  begin.textContent = open ? `Carry on the visit opened ${age(open.openedAt)}` : "Start a visit here";
  begin.onclick = () => (open ? handlers.enter(open.id) : handlers.open({ assetId: unit.id }));
  const another = byId("unit-another");
  show(another, Boolean(open));
  another.onclick = () => handlers.open({ assetId: unit.id });
  byId("unit-label").href = `/units/${encodeURIComponent(unit.id)}/label`;
  byId("unit-details").replaceChildren(...unit.details.flatMap(d => [make("dt", { textContent: d.name }), make("dd", { textContent: d.value })]));
  show(byId("unit-known"), unit.details.length > 0);
  byId("unit-visits").replaceChildren(...unit.visits.map(v => visitRow(v, handlers.enter)));
  show(byId("unit-past"), unit.visits.length > 0);
  begin.focus();
}
