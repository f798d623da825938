// Quick answers from the tables, with or without a line: saturation and conversion by a form with units.
import { byId, make, show, unitName } from "./dom.js";
import { absolute, Curve, fromCanonical, loadTables, said, toCanonical } from "./tables.js";

const seaLevel = 101325;
const first = { us: { Pressure: "psig", Temperature: "degF" }, metric: { Pressure: "bar", Temperature: "degC" } };
let tables = null;
let site = { units: "us", atmospherePa: seaLevel, refrigerant: null };

const number = id => Number(byId(id).value.trim().replace(",", "."));
const rounded = (value, unit) => `${unit.dimension === "Temperature" || Math.abs(value) >= 100 ? value.toFixed(1) : Number(value.toPrecision(4))} ${unitName(unit.symbol)}`;
const ofDimension = dimension => tables.units.filter(u => u.dimension === dimension);

function options(select, units, chosen) {
  select.replaceChildren(...units.map(u => make("option", { value: u.symbol, textContent: unitName(u.symbol), selected: u.symbol === chosen })));
}

/** The ends of the curve, in the unit the value was given in. */
const range = (curve, unit, isPressure) => isPressure
  ? [curve.lowest, curve.highest].map(pascals => said(unit, pascals, site.atmospherePa))
  : [curve.first, curve.last].map(degrees => fromCanonical(unit, degrees));

function saturation() {
  const answer = byId("quick-answer");
  const table = tables.refrigerants.find(r => r.name === byId("quick-refrigerant").value);
  const isPressure = byId("quick-form").elements.given.value === "Pressure";
  const unit = ofDimension(isPressure ? "Pressure" : "Temperature").find(u => u.symbol === byId("quick-unit").value);
  if (!table || !unit || byId("quick-value").value.trim() === "") return answer.replaceChildren();
  const value = number("quick-value");
  if (!Number.isFinite(value)) return answer.replaceChildren(make("p", { textContent: "Enter a number." }));
  const lines = ["dew", "bubble"].map(point => {
    const curve = new Curve(table.first, table[point]);
    const other = ofDimension(isPressure ? "Temperature" : "Pressure").find(u => u.symbol === first[site.units][isPressure ? "Temperature" : "Pressure"]);
    const found = isPressure
      ? curve.temperature(absolute(unit, value, site.atmospherePa))
      : curve.pressure(toCanonical(unit, value));
    if (found === null) return `${point}: the table for ${table.name} goes from ${range(curve, unit, isPressure).map(v => rounded(v, unit)).join(" to ")}`;
    return `${point}: ${rounded(isPressure ? fromCanonical(other, found) : said(other, found, site.atmospherePa), other)}`;
  });
  answer.replaceChildren(...lines.map(textContent => make("p", { textContent })),
    make("p", { className: "small", textContent: `Gauge against ${(site.atmospherePa / 1000).toFixed(1)} kPa of air${site.atmospherePa === seaLevel ? " (sea level)" : ", by the site's altitude"}. Tables computed, see the report for their source.` }));
}

function conversion() {
  const answer = byId("convert-answer");
  const [dimension, symbol] = byId("convert-unit").value.split("|");
  const unit = ofDimension(dimension).find(u => u.symbol === symbol);
  const value = number("convert-value");
  if (!unit || byId("convert-value").value.trim() === "" || !Number.isFinite(value)) return answer.replaceChildren();
  const others = ofDimension(dimension).filter(u => u !== unit).map(u => dimension === "Pressure"
    ? rounded(said(u, absolute(unit, value, site.atmospherePa), site.atmospherePa), u)
    : rounded(fromCanonical(u, toCanonical(unit, value)), u));
  answer.replaceChildren(...others.map(textContent => make("p", { textContent })));
}

function fill() {
  byId("quick-refrigerant").replaceChildren(...tables.refrigerants.map(r => make("option", { value: r.name, textContent: r.name, selected: r.name === site.refrigerant })));
  const given = byId("quick-form").elements.given.value;
  options(byId("quick-unit"), ofDimension(given), first[site.units][given]);
  const names = { Pressure: "Pressure", Temperature: "Temperature", TemperatureDifference: "Temperature difference", Vacuum: "Vacuum", Mass: "Mass", Length: "Length", Volume: "Volume" };
  byId("convert-unit").replaceChildren(...Object.entries(names).map(([dimension, label]) => make("optgroup", { label },
    ...ofDimension(dimension).map(u => make("option", { value: `${dimension}|${u.symbol}`, textContent: unitName(u.symbol) })))));
}

for (const id of ["quick-form", "convert-form"]) byId(id).addEventListener("submit", event => event.preventDefault());
byId("quick-form").addEventListener("input", event => {
  if (event.target.name === "given") options(byId("quick-unit"), ofDimension(event.target.value), first[site.units][event.target.value]);
  saturation();
});
byId("convert-form").addEventListener("input", conversion);
for (const button of document.querySelectorAll("[data-sign]")) {
  button.addEventListener("click", () => {
    const field = byId(button.dataset.sign);
    field.value = field.value.startsWith("-") ? field.value.slice(1) : `-${field.value}`;
    field.dispatchEvent(new Event("input", { bubbles: true }));
  });
}

/** Opens the form for the visit's refrigerant, units and altitude. */
export async function openQuick(view) {
  site = view ?? site;
  byId("quick").showModal();
  try {
    tables ??= await loadTables();
    fill();
    saturation();
    show(byId("quick-missing"), false);
  } catch {
    show(byId("quick-missing"), true);
  }
}
