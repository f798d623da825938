// The conversation as it was said: the technician's words on the right, the answer below, a caution in its own striped field.
import { byId, make, show, unitName } from "./dom.js";

/** "9 degC" as it is written by hand: 9 °C. */
const written = text => text.replace(/ (degC|degF)$/, (_, unit) => ` ${unitName(unit)}`);

const ways = { sms: "by text message", voice: "by voice", page: "" };

const who = ({ by, channel }) => [by, ways[channel] ?? channel].filter(part => part).join(", ");

function caution({ text }) {
  return make("p", { className: "caution" }, make("span", { className: "unseen", textContent: "Caution: " }), text);
}

/** What the assistant said in one turn; its question stands large below. */
function spoken(reply) {
  const item = make("div", { className: "spoken" });
  if (reply.say) item.append(make("p", { textContent: reply.say }));
  item.append(...reply.because.map(text => make("p", { className: "because", textContent: text })));
  item.append(...reply.cautions.map(caution));
  return item;
}

export class Log {
  #list = byId("log");
  #last = null;

  constructor() {
    // The dock below grows and shrinks with its question; what was said last stays in view.
    const room = byId("conversation");
    new ResizeObserver(() => this.end()).observe(room);
    room.addEventListener("scroll", () => this.#markRest());
    byId("read-on").addEventListener("click", () => room.scrollBy(0, room.clientHeight * 0.7));
  }

  clear() {
    this.#list.replaceChildren();
    this.#last = null;
  }

  has(id) {
    return this.#find(id) !== undefined;
  }

  /** Adds the technician's words, or somebody else's with the name and the way they came; they are marked as waiting until the program has taken them. */
  heard(entry, waiting) {
    const isOwn = waiting || !entry.by;
    const item = make("div", { className: isOwn ? "heard" : "heard other" });
    item.classList.toggle("waiting", waiting);
    item.dataset.id = entry.id;
    if (!isOwn) item.append(make("span", { className: "who", textContent: who(entry) }));
    item.append(written(entry.text || entry.caption || "Picture"));
    if (entry.image) item.append(make("img", { src: entry.image, alt: entry.caption || "Picture" }));
    if (waiting) item.append(make("span", { className: "note", textContent: "not sent yet" }));
    this.#list.append(item);
    this.end();
  }

  /** A picture that came from elsewhere: its caption, and the picture itself only when wanted, for it costs a slow line seconds. */
  pictured(entry, visit) {
    const address = `/visits/${encodeURIComponent(visit)}/pictures/${entry.picture}.jpg`;
    const item = make("div", { className: entry.by ? "heard other" : "heard" });
    item.dataset.id = entry.picture;
    if (entry.by) item.append(make("span", { className: "who", textContent: entry.by }));
    item.append(make("a", { className: "press", href: address, target: "_blank", rel: "noopener", textContent: `Picture: ${entry.caption || "without a caption"}` }));
    this.#list.append(item);
    this.end();
  }

  taken(id) {
    this.#settle(id);
  }

  refused(id, line) {
    this.#settle(id);
    this.note(id, `not taken: ${line}`);
  }

  /** How much of a picture is over. */
  progress(id, share) {
    const note = this.#find(id)?.querySelector(".note");
    if (note) note.textContent = `sending, ${Math.round(share * 100)} %`;
  }

  note(id, text) {
    this.#find(id)?.append(make("span", { className: "note", textContent: text }));
  }

  remove(id) {
    this.#find(id)?.remove();
  }

  #settle(id) {
    const item = this.#find(id);
    item?.classList.remove("waiting");
    item?.querySelector(".note")?.remove();
  }

  /** Adds an answer. Its question stands large below; when the next answer comes, it is written here for the record. */
  said(reply) {
    if (this.#last?.reply.ask) {
      this.#last.item.append(make("p", { className: "asked", textContent: this.#last.reply.ask }));
    }
    const item = spoken(reply);
    this.#list.append(item);
    this.#last = { item, reply };
    this.end();
  }

  /** Scrolls to the end, but not past the beginning of the last answer: a long one is read from its start. */
  end() {
    const room = byId("conversation");
    const verdict = byId("verdict").offsetHeight;
    const last = this.#last?.item === this.#list.lastElementChild ? this.#last.item : null;
    const start = last ? last.offsetTop - room.offsetTop - verdict - 8 : Infinity;
    room.scrollTop = Math.min(room.scrollHeight - room.clientHeight, start);
    this.#markRest();
  }

  /** A caution or a number under the edge must not be missed. */
  #markRest() {
    const room = byId("conversation");
    const { bottom } = this.#list.getBoundingClientRect();
    show(byId("read-on"), bottom > room.getBoundingClientRect().bottom + 4);
  }

  #find(id) {
    return [...this.#list.children].find(item => item.dataset.id === id);
  }
}
