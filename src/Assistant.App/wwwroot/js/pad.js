// The number pad: digits, point, sign, and the units the question can have. A bare number goes out with the chosen unit.
import { byId, make, show, unitName } from "./dom.js";

const keys = ["7", "8", "9", "⌫", "4", "5", "6", "±", "1", "2", "3", "Clear", "0", ".", "abc", "Send"];
const spoken = { "⌫": "Delete the last digit", "±": "Minus or plus", ".": "Point", abc: "Type words instead" };
const bareNumber = /^-?(\d+\.?\d*|\.\d+)$/;

export class Pad {
  #units = [];

  constructor() {
    this.field = byId("text");
    byId("pad").append(...keys.map(key => {
      const button = make("button", { type: "button", textContent: key, className: key === "Send" ? "main word" : key.length > 1 ? "word" : "" });
      if (spoken[key]) button.setAttribute("aria-label", spoken[key]);
      button.addEventListener("click", () => this.#press(key));
      return button;
    }));
    byId("keys").addEventListener("click", () => this.#switch(true));
  }

  /** Shows what the question takes: a number in one of these units, or words. */
  ask(units) {
    const same = units.join() === this.#units.join();
    this.#units = units;
    if (!same) {
      byId("units").replaceChildren(...units.map((unit, index) => make("label", {},
        make("input", { type: "radio", name: "unit", value: unit, checked: index === 0 }),
        make("span", { textContent: unitName(unit) }))));
    }
    show(byId("units"), units.length > 0);
    this.#switch(true, false);
  }

  /** What is said: the text as it stands, a bare number with its unit. */
  text() {
    const text = this.field.value.trim();
    const unit = document.querySelector("#units input:checked")?.value;
    return this.#units.length > 0 && unit && bareNumber.test(text) ? `${text} ${unit.startsWith("deg") ? unitName(unit) : unit}` : text;
  }

  clear() {
    this.field.value = "";
  }

  #switch(wanted, focus = true) {
    const shown = this.#units.length > 0 && wanted;
    show(byId("pad"), shown);
    show(byId("send"), !shown);
    show(byId("keys"), this.#units.length > 0 && !wanted);
    this.field.classList.toggle("number", shown);
    this.field.placeholder = shown ? "" : "Say it in your words";
    this.field.inputMode = shown ? "none" : "text";
    if (focus) this.field.focus();
  }

  #press(key) {
    const value = this.field.value;
    if (key === "abc") this.#switch(false);
    else if (key === "Send") byId("say").requestSubmit();
    else if (key === "Clear") this.clear();
    else if (key === "⌫") this.field.value = value.slice(0, -1);
    else if (key === "±") this.field.value = value.startsWith("-") ? value.slice(1) : `-${value}`;
    else if (key !== "." || !value.includes(".")) this.field.value = value + key;
  }
}
