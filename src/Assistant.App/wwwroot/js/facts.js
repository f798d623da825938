// What every fact is called and how it may be answered; kept on the phone, so that any reading can be entered without a line.
import * as api from "./api.js";
import { keep, recall } from "./kept.js";

/** The facts for a site's units, from the program or from what the phone kept; null where it has neither. */
export async function factsFor(units) {
  const key = `facts:${units}`;
  try {
    const facts = await api.facts(units);
    await keep(key, facts);
    return facts;
  } catch {
    return await recall(key) ?? null;
  }
}
