// Talks to the program. A refusal (4xx) carries one line for people; anything else that fails may be tried again.
export class Refused extends Error {}
export class Unreachable extends Error {}

const patience = 30000;

async function call(path, options = {}) {
  let response;
  let body;
  try {
    response = await fetch(path, { credentials: "same-origin", cache: "no-store", signal: AbortSignal.timeout(patience), ...options });
    body = await response.json().catch(() => ({}));
  } catch {
    throw new Unreachable(navigator.onLine ? "The program does not answer." : "No signal.");
  }
  if (response.ok) return body;
  if (response.status === 401) location.assign(`/enter?to=${encodeURIComponent(location.pathname + location.search)}`);
  const line = body.error ?? `The program answered with code ${response.status}.`;
  throw response.status >= 500 || response.status === 429 || response.status === 401 ? new Unreachable(line) : new Refused(line);
}

const json = body => ({ method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) });
const at = id => `/api/visits/${encodeURIComponent(id)}`;

export const begin = () => call("/api/start");
export const open = request => call("/api/visits", json(request));
export const visit = id => call(at(id));
export const say = (id, message) => call(`${at(id)}/messages`, json(message));
export const reminders = (id, asking) => call(`${at(id)}/reminders`, json({ id: asking }));
export const facts = units => call(`/api/facts?units=${units}`);
export const search = words => call(`/api/search?q=${encodeURIComponent(words)}`);
export const unit = id => call(`/api/units/${encodeURIComponent(id)}`);
export const plots = id => call(`${at(id)}/plots`);
export const share = id => call(`${at(id)}/share`);
export const join = request => call("/api/join", json(request));
export const tables = () => call("/tables.json");

export const pictureState = (id, picture) => call(`${at(id)}/pictures/${picture}`);
export const picturePiece = (id, picture, about, piece) => call(
  `${at(id)}/pictures/${picture}?${new URLSearchParams(about)}`,
  { method: "POST", headers: { "Content-Type": "application/octet-stream" }, body: piece });
