// The first screen: carry on, find a unit or a visit, a new visit, or the demo.
import * as api from "./api.js";
import { age, byId, make, newId, show, trouble } from "./dom.js";
import { keep, recall } from "./kept.js";

export const personKey = "coldwalk.person";
const typingPause = 300;

export const person = () => localStorage.getItem(personKey) || "technician";

function rememberPerson(field) {
  const name = byId(field).value.trim();
  if (name) localStorage.setItem(personKey, name);
}

function row(title, detail, press) {
  const button = make("button", { type: "button" }, title, make("span", { className: "small", textContent: detail }));
  button.addEventListener("click", press);
  return make("li", {}, button);
}

export class StartScreen {
  #typing = 0;

  /** handlers: enter(visitId, view), unit(assetId). */
  constructor(handlers) {
    this.handlers = handlers;
    byId("new-visit").addEventListener("submit", event => {
      event.preventDefault();
      const form = new FormData(event.target);
      this.open({ site: form.get("site").trim(), refrigerant: form.get("refrigerant").trim(), units: form.get("units") });
    });
    byId("demo").addEventListener("click", () => this.open({ demo: true }));
    byId("join-form").addEventListener("submit", async event => {
      event.preventDefault();
      rememberPerson("join-person");
      try {
        const view = await api.join({ id: newId(), code: byId("join-code").value, by: person() });
        trouble("");
        byId("join-form").reset();
        this.handlers.enter(view.id, view);
      } catch (failure) {
        trouble(failure.message);
      }
    });
    byId("signed-in").addEventListener("submit", async event => {
      event.preventDefault();
      await fetch("/leave", { method: "POST", redirect: "manual" }).catch(() => {});
      location.assign("/enter");
    });
    byId("find-form").addEventListener("submit", event => {
      event.preventDefault();
      this.#find();
    });
    // What is typed next is another try: what was said of the last one goes.
    byId("start").addEventListener("input", () => trouble(""));
    byId("find").addEventListener("input", () => {
      clearTimeout(this.#typing);
      this.#typing = setTimeout(() => this.#find(), typingPause);
    });
  }

  async show() {
    for (const screen of ["visit", "unit"]) show(byId(screen), false);
    show(byId("start"), true);
    document.title = "Coldwalk";
    for (const field of ["new-person", "join-person"]) byId(field).value = localStorage.getItem(personKey) ?? "";
    const kept = await recall("start");
    if (kept) this.fill(kept);
    try {
      const known = await api.begin();
      trouble("");
      keep("start", known);
      this.fill(known);
    } catch (failure) {
      trouble(kept ? `${failure.message} Visits this phone has seen can still be opened.` : `${failure.message} Start it with "serve", then load this page again.`);
    }
  }

  fill({ visits, assets, refrigerants, demo, person: signedIn }) {
    if (signedIn) localStorage.setItem(personKey, signedIn);
    for (const field of document.querySelectorAll("[data-unsigned]")) show(field, !signedIn);
    show(byId("signed-in"), Boolean(signedIn));
    byId("signed-name").textContent = signedIn ?? "";
    show(byId("open-visits"), visits.length > 0);
    byId("open-list").replaceChildren(...visits.map(v =>
      row(v.site, `opened ${age(v.at)}`, () => this.handlers.enter(v.id))));
    byId("known-list").dataset.count = assets.length;
    this.#showKnown();
    byId("known-list").replaceChildren(...assets.map(a => row(a.site, a.unit, () => this.handlers.unit(a.id))));
    byId("refrigerants").replaceChildren(...refrigerants.map(value => make("option", { value })));
    if (demo) byId("demo-notice").textContent = demo;
  }

  units() {
    return new FormData(byId("new-visit")).get("units");
  }

  async open(request) {
    rememberPerson("new-person");
    try {
      const view = await api.open({ id: newId(), by: person(), units: this.units(), ...request });
      trouble("");
      // The next visit is another one.
      for (const field of ["new-site", "new-refrigerant"]) byId(field).value = "";
      this.handlers.enter(view.id, view);
    } catch (failure) {
      trouble(failure.message);
    }
  }

  /** All that is known, until something is looked for: what was not found would stand right below. */
  #showKnown() {
    show(byId("known-list"), byId("known-list").dataset.count > 0 && byId("find").value.trim().length < 2);
  }

  async #find() {
    const words = byId("find").value.trim();
    const list = byId("find-list");
    this.#showKnown();
    if (words.length < 2) return list.replaceChildren();
    try {
      const { units, visits } = await api.search(words);
      if (words !== byId("find").value.trim()) return;
      list.replaceChildren(
        ...units.map(u => row(u.site, u.unit, () => this.handlers.unit(u.id))),
        ...visits.map(v => row(v.site, `visit opened ${age(v.openedAt)}${v.closedAt ? ", closed" : ""}`, () => this.handlers.enter(v.id))));
      if (units.length + visits.length === 0) list.append(make("li", { textContent: "Nothing found. One word of the site is enough." }));
    } catch (failure) {
      list.replaceChildren(make("li", { textContent: failure.message }));
    }
  }
}
