// Talks to the program. A refusal (4xx) carries one line for people; anything else that fails may be tried again.
export class Refused extends Error {}
export class Unreachable extends Error {}

async function call(path, options = {}) {
  let response;
  try {
    response = await fetch(path, { credentials: "same-origin", cache: "no-store", ...options });
  } catch {
    throw new Unreachable("The program does not answer.");
  }
  const body = await response.json().catch(() => ({}));
  if (response.ok) return body;
  const line = body.error ?? `The program answered with code ${response.status}.`;
  throw response.status >= 500 || response.status === 429 ? new Unreachable(line) : new Refused(line);
}

const json = body => ({ method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) });

export const begin = () => call("/api/start");
export const open = request => call("/api/visits", json(request));
export const visit = id => call(`/api/visits/${encodeURIComponent(id)}`);
export const say = (id, message) => call(`/api/visits/${encodeURIComponent(id)}/messages`, json(message));
export const reminders = id => call(`/api/visits/${encodeURIComponent(id)}/reminders`, json({}));

export const picture = (id, { by, caption, blob }) => call(
  `/api/visits/${encodeURIComponent(id)}/pictures?` + new URLSearchParams({ by, caption }),
  { method: "POST", headers: { "Content-Type": blob.type }, body: blob });
