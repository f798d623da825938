// The conversation as it was said: the technician's words on the right, the answer below, a caution in its own striped field.
import { byId, make } from "./dom.js";

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

  clear() {
    this.#list.replaceChildren();
    this.#last = null;
  }

  /** Adds the technician's words; they are marked as waiting until the program has taken them. */
  heard(entry, waiting) {
    const item = make("div", { className: waiting ? "heard waiting" : "heard" });
    item.dataset.id = entry.id;
    if (entry.by) item.append(make("span", { className: "unseen", textContent: `${entry.by}: ` }));
    item.append(entry.text ?? entry.caption ?? "picture");
    if (entry.image) item.append(make("img", { src: entry.image, alt: entry.caption || "Picture" }));
    if (waiting) item.append(make("span", { className: "note", textContent: "not sent yet" }));
    this.#list.append(item);
    this.end();
  }

  taken(id) {
    const item = this.#find(id);
    item?.classList.remove("waiting");
    item?.querySelector(".note")?.remove();
  }

  refused(id, line) {
    const item = this.#find(id);
    item?.classList.remove("waiting");
    item?.querySelector(".note")?.remove();
    item?.append(make("span", { className: "note", textContent: `not taken: ${line}` }));
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

  end() {
    const room = byId("conversation");
    room.scrollTop = room.scrollHeight;
  }

  #find(id) {
    return [...this.#list.children].find(item => item.dataset.id === id);
  }
}
