// Small helpers over the document; text is always set as text, never as markup.
export const byId = id => document.getElementById(id);

export function make(tag, properties = {}, ...children) {
  const element = Object.assign(document.createElement(tag), properties);
  element.append(...children.filter(child => child !== null && child !== undefined));
  return element;
}

export function show(element, visible) {
  element.hidden = !visible;
}

/** One clear line across the top; an empty text takes it away. */
export function trouble(text) {
  const line = byId("trouble");
  line.textContent = text;
  show(line, text !== "");
}

export function newId() {
  if (crypto.randomUUID) return crypto.randomUUID();
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), b => b.toString(16).padStart(2, "0")).join("");
}

const unitNames = {
  degF: "°F", degC: "°C", "inHg vacuum": "inHg vac.", bara: "bar abs", kPaa: "kPa abs", ft3: "ft³", m3: "m³",
};

export const unitName = unit => unitNames[unit] ?? unit;

/** How long ago, as people say it. */
export function age(at, now = Date.now()) {
  const minutes = Math.max(0, Math.floor((now - new Date(at)) / 60000));
  if (minutes < 1) return "just now";
  if (minutes < 60) return `${minutes} min ago`;
  const hours = Math.floor(minutes / 60);
  return hours < 48 ? `${hours} h ago` : `${Math.floor(hours / 24)} days ago`;
}
