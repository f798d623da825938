// Saturation and units on the phone: the program's own tables and its own curve through them (a cubic a step, monotone), in ln p against T.
const place = "coldwalk-tables";
const address = "/tables.json";

/** The tables from this phone's store, or from the program; the store is brought up to date when there is a line. */
export async function loadTables() {
  const cache = "caches" in self ? await caches.open(place).catch(() => null) : null;
  const kept = await cache?.match(address);
  if (kept) return kept.json();
  const response = await fetch(address);
  if (!response.ok) throw new Error("The tables are not there.");
  await cache?.put(address, response.clone());
  return response.json();
}

/** Fetches them ahead, and again when the program has newer ones. */
export async function fetchTables() {
  if (!("caches" in self)) return;
  const response = await fetch(address, { cache: "no-cache" }).catch(() => null);
  if (response?.ok) await (await caches.open(place)).put(address, response);
}

function slopes(y) {
  const last = y.length - 1;
  const s = y.map((_, i) => i < 2 || i > last - 2 ? 0 : (y[i - 2] - 8 * y[i - 1] + 8 * y[i + 1] - y[i + 2]) / 12);
  s[0] = (-25 * y[0] + 48 * y[1] - 36 * y[2] + 16 * y[3] - 3 * y[4]) / 12;
  s[1] = (-3 * y[0] - 10 * y[1] + 18 * y[2] - 6 * y[3] + y[4]) / 12;
  s[last - 1] = (3 * y[last] + 10 * y[last - 1] - 18 * y[last - 2] + 6 * y[last - 3] - y[last - 4]) / 12;
  s[last] = (25 * y[last] - 48 * y[last - 1] + 36 * y[last - 2] - 16 * y[last - 3] + 3 * y[last - 4]) / 12;
  return s.map((slope, i) => {
    const before = i > 0 ? y[i] - y[i - 1] : Infinity;
    const after = i < last ? y[i + 1] - y[i] : Infinity;
    return Math.min(Math.max(slope, 0), 3 * Math.min(before, after));
  });
}

/** A saturation curve: pressures in Pa absolute at steps of 1 K from the first temperature in °C. */
export class Curve {
  constructor(first, pressures) {
    this.first = first;
    this.lowest = pressures[0];
    this.highest = pressures[pressures.length - 1];
    this.logs = pressures.map(Math.log);
    this.slopes = slopes(this.logs);
  }

  get last() {
    return this.first + this.logs.length - 1;
  }

  /** Pa absolute at a temperature in °C, or null outside the table. */
  pressure(degrees) {
    if (!(degrees >= this.first && degrees <= this.last)) return null;
    const i = Math.min(Math.floor(degrees - this.first), this.logs.length - 2);
    return Math.exp(this.#within(i, degrees - this.first - i));
  }

  /** °C at a pressure in Pa absolute, or null outside the table. */
  temperature(pascals) {
    if (!(pascals >= this.lowest && pascals <= this.highest)) return null;
    const log = Math.log(pascals);
    const above = this.logs.findIndex(knot => knot >= log);
    const i = Math.max(0, above - 1);
    let [low, high] = [0, 1];
    for (let n = 0; n < 40; n++) {
      const middle = (low + high) / 2;
      if (this.#within(i, middle) < log) low = middle;
      else high = middle;
    }
    return this.first + i + (low + high) / 2;
  }

  #within(i, u) {
    const [y0, y1, s0, s1] = [this.logs[i], this.logs[i + 1], this.slopes[i], this.slopes[i + 1]];
    const rise = y1 - y0;
    return ((((s0 + s1 - 2 * rise) * u) + 3 * rise - 2 * s0 - s1) * u + s0) * u + y0;
  }
}

export const toCanonical = (unit, value) => value * unit.scale + unit.offset;
export const fromCanonical = (unit, canonical) => (canonical - unit.offset) / unit.scale;

const standardAtmosphere = 101325;

/** Pa absolute of a pressure said in a unit; a gauge reads against the atmosphere at the site. */
export const absolute = (unit, value, atmosphere) => toCanonical(unit, value) * 1000 + (unit.absolute ? standardAtmosphere : atmosphere);

/** A pressure in Pa absolute as that unit says it. */
export const said = (unit, pascals, atmosphere) => fromCanonical(unit, (pascals - (unit.absolute ? standardAtmosphere : atmosphere)) / 1000);
