// A phone that came to a visit by its link was never asked whose it is: two that are both called technician are one person to the record.
import * as api from "./api.js";
import { byId, show } from "./dom.js";
import { personKey } from "./start.js";

export async function askName() {
  const known = await api.begin().catch(() => null);
  if (!known) return;
  if (known.person) {
    localStorage.setItem(personKey, known.person);
    return;
  }
  show(byId("naming"), true);
  byId("naming").onsubmit = event => {
    event.preventDefault();
    localStorage.setItem(personKey, byId("naming-person").value.trim());
    show(byId("naming"), false);
  };
}
