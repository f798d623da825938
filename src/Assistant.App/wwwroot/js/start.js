// The first screen: carry on, a known unit, a new visit, or the demo.
import * as api from "./api.js";
import { age, byId, make, newId, show, trouble } from "./dom.js";

const personKey = "coldwalk.person";

export const person = () => localStorage.getItem(personKey) || "technician";

function rememberPerson() {
  const name = byId("new-person").value.trim();
  if (name) localStorage.setItem(personKey, name);
}

function row(title, detail, press) {
  const button = make("button", { type: "button" }, title, make("span", { className: "small", textContent: detail }));
  button.addEventListener("click", press);
  return make("li", {}, button);
}

export class StartScreen {
  constructor(enter) {
    this.enter = enter;
    byId("new-visit").addEventListener("submit", event => {
      event.preventDefault();
      const form = new FormData(event.target);
      this.open({ site: form.get("site").trim(), refrigerant: form.get("refrigerant").trim(), units: form.get("units") });
    });
    byId("demo").addEventListener("click", () => this.open({ demo: true }));
  }

  async show() {
    show(byId("visit"), false);
    show(byId("start"), true);
    document.title = "Coldwalk";
    byId("new-person").value = localStorage.getItem(personKey) ?? "";
    try {
      const known = await api.begin();
      trouble("");
      this.fill(known);
    } catch (failure) {
      trouble(`${failure.message} Start it with "serve", then load this page again.`);
    }
  }

  fill({ visits, assets, refrigerants, demo }) {
    show(byId("open-visits"), visits.length > 0);
    byId("open-list").replaceChildren(...visits.map(v =>
      row(v.site, `opened ${age(v.at)}`, () => this.enter(v.id))));
    show(byId("known-units"), assets.length > 0);
    byId("known-list").replaceChildren(...assets.map(a =>
      row(a.site, a.unit, () => this.open({ assetId: a.id, units: this.units() }))));
    byId("refrigerants").replaceChildren(...refrigerants.map(value => make("option", { value })));
    if (demo) byId("demo-notice").textContent = demo;
  }

  units() {
    return new FormData(byId("new-visit")).get("units");
  }

  async open(request) {
    rememberPerson();
    try {
      const view = await api.open({ id: newId(), by: person(), ...request });
      trouble("");
      this.enter(view.id, view);
    } catch (failure) {
      trouble(failure.message);
    }
  }
}
