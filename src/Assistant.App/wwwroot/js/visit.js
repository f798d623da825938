// One visit on the screen: the talk, the one next thing, and what is known.
import * as api from "./api.js";
import { age, byId, make, newId, show, trouble } from "./dom.js";
import { keep, recall } from "./kept.js";
import { Live } from "./live.js";
import { Log } from "./log.js";
import { Outbox } from "./outbox.js";
import { Pad } from "./pad.js";
import { showCount, showVerdict } from "./standing.js";
import { person } from "./start.js";

const mostKept = 60;

export class VisitScreen {
  #id = null;
  #view = null;
  #entries = [];
  #answered = new Set();
  #away = new Set();
  #asking = null;
  #log = new Log();
  #pad = new Pad(byId("say"));
  #live = new Live({
    turn: turn => this.#turn(turn),
    picture: picture => this.#picture(picture),
    visit: view => this.#grown(view),
    line: isThere => this.#line(isThere),
  });
  #outbox = new Outbox({
    taken: (entry, answer) => this.#taken(entry, answer),
    refused: (entry, line) => this.#refused(entry, line),
    waiting: (count, line) => this.#waiting(count, line),
    sent: (entry, share) => entry.visit === this.#id && this.#log.progress(entry.id, share),
  });

  /** handlers: missing(line), where the address names no visit. */
  constructor(handlers) {
    this.handlers = handlers;
    byId("say").addEventListener("submit", event => {
      event.preventDefault();
      this.say(this.#pad.text(), this.#pad.isNumber);
    });
    for (const button of document.querySelectorAll("[data-say]")) {
      button.addEventListener("click", () => {
        button.closest("dialog")?.close();
        this.#command(button.dataset.say);
      });
    }
    setInterval(() => this.#remind(), 30000);
  }

  get view() {
    return this.#view;
  }

  /** Shows the visit: at once as the phone last saw it, then as it is. */
  async enter(id, fresh) {
    this.leave();
    this.#id = id;
    for (const screen of ["start", "unit"]) show(byId(screen), false);
    show(byId("visit"), true);
    const kept = fresh ? null : await recall(`visit:${id}`);
    if (id !== this.#id) return;
    if (fresh ?? kept?.view) await this.#draw(fresh ?? kept.view, fresh ? fresh.turns : kept.entries);
    if (!fresh) await this.#fetch(id, kept);
    if (id !== this.#id || !this.#view) return;
    this.#outbox.send();
    this.#live.open(id, this.#view.version);
    byId("dock").focus();
  }

  leave() {
    this.#live.close();
    [this.#id, this.#view, this.#entries] = [null, null, []];
    this.#answered.clear();
    this.#log.clear();
  }

  /** Says something. An answer to what stands on the screen carries what it answers: it may arrive when something else is asked. */
  say(text, isAnswer = false) {
    if (!text) return;
    this.#pad.clear();
    const asked = this.#view?.reply.asked;
    const answers = !isAnswer ? null : asked ? `fact:${asked}` : this.#view?.stop ? `stop:${this.#view.stop}` : null;
    this.#add({ text, answers });
    if (answers && this.#away.size > 0) this.#hold();
  }

  /** "undo" first takes back what has not gone out yet; "skip" skips what stands on the screen and nothing else. */
  async #command(word) {
    const unsent = word === "undo" ? await this.#outbox.takeBack(this.#id) : null;
    if (unsent) {
      this.#away.delete(unsent.id);
      this.#log.remove(unsent.id);
      this.#show(this.#view);
    } else if (word === "skip" && this.#view?.stop) {
      this.#add({ text: word, answers: `stop:${this.#view.stop}` });
    } else {
      this.say(word);
    }
  }

  /** Says a reading by its name. */
  enterReading({ text, fact }) {
    this.#add({ text, fact });
  }

  /** Keeps a picture for this visit and this stop. */
  picture({ id, caption, blob, image }) {
    this.#add({ id, caption, blob, stop: this.#view?.stop }, image);
  }

  #add(what, image) {
    const entry = { visit: this.#id, id: newId(), by: person(), made: Date.now(), ...what };
    this.#log.heard({ ...entry, text: entry.text || entry.caption || "Picture", image }, true);
    this.#outbox.add(entry);
  }

  async #fetch(id, kept) {
    try {
      const now = await api.visit(id);
      if (id !== this.#id) return;
      trouble("");
      await this.#draw(now, now.turns);
    } catch (failure) {
      if (id !== this.#id) return;
      if (kept?.view && failure instanceof api.Unreachable) this.#line(false);
      else if (failure instanceof api.Refused && !kept?.view) await this.handlers.missing("There is no visit under this address. Open one here.");
      else trouble(failure.message);
    }
  }

  async #draw(view, entries) {
    this.#entries = [];
    this.#answered.clear();
    this.#log.clear();
    for (const entry of entries) (entry.picture ? this.#picture(entry) : this.#turn(entry));
    if (entries.length === 0) this.#log.said(view.reply);
    this.#show(view);
    for (const entry of await this.#outbox.entries()) {
      if (entry.visit === this.#id && !this.#log.has(entry.id)) {
        this.#log.heard({ ...entry, text: entry.text || entry.caption || "Picture", image: entry.blob && URL.createObjectURL(entry.blob) }, true);
      }
    }
  }

  /** Something was said, here or elsewhere; the same turn again changes nothing. */
  #turn(turn) {
    if (this.#answered.has(turn.id)) return;
    this.#answered.add(turn.id);
    this.#away.delete(turn.id);
    if (this.#log.has(turn.id)) this.#log.taken(turn.id);
    else this.#log.heard({ ...turn, by: turn.by === person() ? "" : turn.by }, false);
    if (turn.reply) this.#log.said(turn.reply);
    this.#entries = [...this.#entries, turn].slice(-mostKept);
  }

  #picture(picture) {
    if (this.#answered.has(picture.picture)) return;
    this.#answered.add(picture.picture);
    this.#log.pictured({ ...picture, by: picture.by === person() ? "" : picture.by }, this.#id);
    this.#entries = [...this.#entries, picture].slice(-mostKept);
  }

  #grown(view) {
    if (!this.#view || view.version > this.#view.version) this.#show(view);
    this.#line(true);
  }

  #taken(entry, answer) {
    this.#away.delete(entry.id);
    if (entry.visit !== this.#id) return;
    if (answer.picture) {
      this.#answered.add(answer.picture);
      this.#log.taken(entry.id);
      this.#entries = [...this.#entries, { picture: answer.picture, by: entry.by, caption: entry.caption, at: new Date(entry.made).toISOString() }];
      return;
    }
    this.#turn({ id: entry.id, by: entry.by, channel: "page", text: entry.text, at: new Date(entry.made).toISOString(), reply: answer.reply });
    if (!this.#view || answer.version >= this.#view.version) this.#show(answer);
    this.#beside(entry, answer);
  }

  /** What somebody else read meanwhile for the same fact is kept too, and said. */
  #beside(entry, view) {
    const fact = entry.answers?.startsWith("fact:") ? entry.answers.slice(5) : entry.fact;
    const reading = view.readings.find(r => r.fact === fact);
    const other = [reading, ...reading?.others ?? []].find(o => o?.at && o.by !== entry.by && new Date(o.at) > entry.made);
    if (other) this.#log.note(entry.id, `${other.by} read ${other.value} meanwhile (${age(other.at)}); both are kept.`);
  }

  #refused(entry, line) {
    this.#away.delete(entry.id);
    trouble(line);
    if (entry.visit !== this.#id) return;
    this.#log.refused(entry.id, line);
    if (this.#view) this.#show(this.#view);
  }

  async #remind() {
    const id = this.#id;
    if (!id || document.hidden || byId("visit").hidden) return;
    // Asked again under the same name until an answer has arrived: what was given to a lost one is given again.
    this.#asking ??= newId();
    const due = await api.reminders(id, this.#asking).catch(() => null);
    if (due) this.#asking = null;
    if (due && id === this.#id) due.forEach(reply => this.#log.said({ ...reply, ask: null }));
  }

  #waiting(count, line) {
    const note = byId("outbox");
    show(note, count > 0);
    if (count > 0) show(byId("line"), false);
    note.textContent = count > 0 ? `${line} ${count} kept on this phone; sent when it answers.` : "";
    if (count > 0) this.#outbox.entries().then(entries => {
      this.#away = new Set(entries.filter(e => e.visit === this.#id && e.answers).map(e => e.id));
      if (this.#away.size > 0) this.#hold();
    });
  }

  #line(isThere) {
    if (isThere) trouble("");
    show(byId("line"), !isThere && byId("outbox").hidden);
    if (!isThere && this.#view) byId("line").textContent = `No connection. This is how the visit stood ${age(this.#view.seen)}.`;
    if (isThere) this.#outbox.send();
  }

  /** The question on the screen is answered and the answer waits: no second one is taken for it. */
  #hold() {
    // Each try to send calls this again: a button that is swapped under a thumb loses the press.
    if (byId("choices").querySelector("[data-held]")) return;
    byId("ask").textContent = "Kept. The next question comes with the signal.";
    byId("ask").dataset.asked = "";
    const other = this.#choice("Enter another reading", () => byId("other-reading").click());
    other.dataset.held = "";
    byId("choices").replaceChildren(other);
    this.#pad.ask([]);
  }

  #show(view) {
    this.#view = { ...view, seen: view.seen ?? Date.now() };
    keep(`visit:${this.#id}`, { view: { ...this.#view, turns: [] }, entries: this.#entries });
    byId("site").textContent = view.site;
    document.title = `${view.site} - Coldwalk`;
    byId("place").textContent = view.place;
    byId("ask").textContent = view.reply.ask ?? "";
    byId("ask").classList.toggle("long", (view.reply.ask ?? "").length > 90);
    byId("ask").dataset.asked = view.reply.asked ?? "";
    this.#choices(view.reply.choices);
    this.#pad.ask(view.reply.units);
    showVerdict(view.verdicts);
    showCount(view.readings);
    if (this.#away.size > 0) this.#hold();
    dispatchEvent(new CustomEvent("visit-shown", { detail: this.#view }));
    this.#log.end();
    if (getComputedStyle(byId("conversation")).overflowY === "visible") byId("dock").scrollIntoView({ block: "end" });
  }

  #choices(choices) {
    const group = byId("choices");
    const hadFocus = group.contains(document.activeElement);
    group.replaceChildren(...choices.map(choice => this.#choice(choice.replaceAll("-", " "), () => this.say(choice, true))));
    if (hadFocus) byId("dock").focus();
  }

  #choice(textContent, press) {
    const button = make("button", { type: "button", textContent });
    button.addEventListener("click", press);
    return button;
  }
}
