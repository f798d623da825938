// The number pad: digits, point, sign, and the units the question can have. A bare number goes out with the chosen unit.
import { make, show, unitName } from "./dom.js";

const keys = ["7", "8", "9", "⌫", "4", "5", "6", "±", "1", "2", "3", "Clear", "0", ".", "abc", "Send"];
const spoken = { "⌫": "Delete the last digit", "±": "Minus or plus", ".": "Point", abc: "Type words instead" };
const bareNumber = /^-?(\d+\.?\d*|\.\d+)$/;

export class Pad {
  #units = [];

  /** A form with a text field, a place for the units, one for the keys, a key that brings the pad back, and a send button. */
  constructor(form) {
    this.form = form;
    this.field = form.querySelector("input[name=text]");
    this.unitGroup = form.querySelector(".units");
    this.board = form.querySelector(".pad");
    this.back = form.querySelector(".keys");
    this.sendButton = form.querySelector("button[type=submit]");
    this.board.append(...keys.map(key => {
      const button = make("button", { type: "button", textContent: key, className: key === "Send" ? "main word" : key.length > 1 ? "word" : "" });
      if (spoken[key]) button.setAttribute("aria-label", spoken[key]);
      button.addEventListener("click", () => this.#press(key));
      return button;
    }));
    this.back.addEventListener("click", () => this.#switch(true));
  }

  /** Shows what the question takes: a number in one of these units, or words. */
  ask(units) {
    const same = units.join() === this.#units.join();
    this.#units = units;
    if (!same) {
      const group = `unit-${this.form.id}`;
      this.unitGroup.replaceChildren(...units.map((unit, index) => make("label", {},
        make("input", { type: "radio", name: group, value: unit, checked: index === 0 }),
        make("span", { textContent: unitName(unit) }))));
    }
    show(this.unitGroup, units.length > 0);
    this.#switch(true, false);
  }

  get isNumber() {
    return this.#units.length > 0 && bareNumber.test(this.field.value.trim());
  }

  /** What is said: the text as it stands, a bare number with its unit. */
  text() {
    const text = this.field.value.trim();
    const unit = this.unitGroup.querySelector("input:checked")?.value;
    return this.isNumber && unit ? `${text} ${unit.startsWith("deg") ? unitName(unit) : unit}` : text;
  }

  clear() {
    this.field.value = "";
  }

  #switch(wanted, focus = true) {
    const shown = this.#units.length > 0 && wanted;
    show(this.board, shown);
    show(this.sendButton, !shown);
    show(this.back, this.#units.length > 0 && !wanted);
    this.field.classList.toggle("number", shown);
    this.field.placeholder = shown ? "" : "Say it in your words";
    this.field.inputMode = shown ? "none" : "text";
    if (focus) this.field.focus();
  }

  #press(key) {
    const value = this.field.value;
    if (key === "abc") this.#switch(false);
    else if (key === "Send") this.form.requestSubmit();
    else if (key === "Clear") this.clear();
    else if (key === "⌫") this.field.value = value.slice(0, -1);
    else if (key === "±") this.field.value = value.startsWith("-") ? value.slice(1) : `-${value}`;
    else if (key !== "." || !value.includes(".")) this.field.value = value + key;
  }
}
