// One visit on the screen: the talk, the one next thing, and what is known.
import * as api from "./api.js";
import { byId, make, newId, show, trouble } from "./dom.js";
import { Log } from "./log.js";
import { Outbox } from "./outbox.js";
import { Pad } from "./pad.js";
import { startPictures } from "./picture.js";
import { showReadings, showVerdict } from "./standing.js";
import { person } from "./start.js";

export class VisitScreen {
  #id = null;
  #log = new Log();
  #pad = new Pad();
  #outbox = new Outbox({
    taken: (entry, view) => this.#taken(entry, view),
    refused: (entry, line) => this.#refused(entry, line),
    waiting: (count, line) => this.#waiting(count, line),
  });

  constructor() {
    byId("say").addEventListener("submit", event => {
      event.preventDefault();
      this.#say(this.#pad.text());
    });
    for (const button of document.querySelectorAll("[data-say]")) {
      button.addEventListener("click", () => {
        button.closest("dialog")?.close();
        this.#say(button.dataset.say);
      });
    }
    startPictures(picture => this.#keep(picture));
    setInterval(() => this.#remind(), 30000);
  }

  async enter(id, view) {
    this.#id = id;
    show(byId("start"), false);
    show(byId("visit"), true);
    this.#log.clear();
    try {
      const now = view ?? await api.visit(id);
      trouble("");
      for (const turn of now.turns) {
        this.#log.heard(turn, false);
        if (turn.reply) this.#log.said(turn.reply);
      }
      if (now.turns.length === 0) this.#log.said(now.reply);
      this.#show(now);
    } catch (failure) {
      trouble(failure.message);
    }
    for (const entry of await this.#outbox.entries()) {
      if (entry.visit === id) this.#log.heard(entry, true);
    }
    this.#outbox.send();
    byId("dock").focus();
  }

  #say(text) {
    if (!text) return;
    this.#pad.clear();
    const entry = { visit: this.#id, id: newId(), by: person(), text };
    this.#log.heard(entry, true);
    this.#outbox.add(entry);
  }

  #keep({ id, caption, blob, image }) {
    const entry = { visit: this.#id, id, by: person(), caption, blob };
    this.#log.heard({ ...entry, text: caption || "Picture", image }, true);
    this.#outbox.add(entry);
  }

  #taken(entry, view) {
    if (entry.visit !== this.#id) return;
    this.#log.taken(entry.id);
    if (view.reply) {
      this.#log.said(view.reply);
      this.#show(view);
    }
  }

  #refused(entry, line) {
    trouble(line);
    if (entry.visit === this.#id) this.#log.refused(entry.id, line);
  }

  async #remind() {
    const id = this.#id;
    if (!id || document.hidden || byId("visit").hidden) return;
    const due = await api.reminders(id).catch(() => []);
    if (id === this.#id) due.forEach(reply => this.#log.said({ ...reply, ask: null }));
  }

  #waiting(count, line) {
    const note = byId("outbox");
    show(note, count > 0);
    note.textContent = count > 0 ? `${line} ${count} kept on this phone; sent when it answers.` : "";
  }

  #show(view) {
    byId("site").textContent = view.site;
    document.title = `${view.site} - Coldwalk`;
    byId("place").textContent = view.place;
    byId("report-html").href = `/visits/${encodeURIComponent(this.#id)}/report.html`;
    byId("report-pdf").href = `/visits/${encodeURIComponent(this.#id)}/report.pdf`;
    byId("ask").textContent = view.reply.ask ?? "";
    byId("ask").classList.toggle("long", (view.reply.ask ?? "").length > 90);
    byId("ask").dataset.asked = view.reply.asked ?? "";
    this.#choices(view.reply.choices);
    this.#pad.ask(view.reply.units);
    showVerdict(view.verdicts);
    showReadings(view.readings, view.verdicts);
    this.#log.end();
    if (getComputedStyle(byId("conversation")).overflowY === "visible") byId("dock").scrollIntoView({ block: "end" });
  }

  #choices(choices) {
    const group = byId("choices");
    const hadFocus = group.contains(document.activeElement);
    group.replaceChildren(...choices.map(choice => {
      const button = make("button", { type: "button", textContent: choice.replaceAll("-", " ") });
      button.addEventListener("click", () => this.#say(choice));
      return button;
    }));
    if (hadFocus) byId("dock").focus();
  }
}
