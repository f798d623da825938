// What was said or taken and not yet received is kept on the phone, and sent again, one after the other, until it is.
import * as api from "./api.js";
import { store } from "./kept.js";

const longestWait = 30000;
const pieceSize = 48 * 1024;

/** Keeps the entry, then tries to send. Where the browser keeps nothing, it is sent straight away. */
export class Outbox {
  #sending = false;
  #wait = 1000;
  #timer = 0;
  #unkept = [];

  /** handlers: taken(entry, answer), refused(entry, line), waiting(count, line), sent(entry, share). */
  constructor(handlers) {
    this.handlers = handlers;
    addEventListener("online", () => this.send());
  }

  async add(entry) {
    try {
      entry.seq = await store("outbox", "readwrite", outbox => outbox.add(entry));
    } catch {
      this.#unkept.push(entry);
    }
    this.#wait = 1000;
    await this.send();
  }

  /** Takes the last thing said on a visit back, where it has not gone out yet. */
  async takeBack(visit) {
    if (this.#sending) return null;
    const last = (await this.entries()).filter(entry => entry.visit === visit).pop();
    if (!last) return null;
    await this.#drop(last);
    const left = await this.entries();
    this.handlers.waiting(left.length, left.length > 0 ? "No signal." : "");
    return last;
  }

  async entries() {
    const kept = await store("outbox", "readonly", outbox => outbox.getAll()).catch(() => []);
    return [...kept, ...this.#unkept];
  }

  /** One page at a time sends: another page of this phone goes on where this one stops. */
  async send() {
    if (this.#sending) return;
    this.#sending = true;
    clearTimeout(this.#timer);
    try {
      if (navigator.locks) await navigator.locks.request("coldwalk-outbox", () => this.#sendAll());
      else await this.#sendAll();
      this.#wait = 1000;
      this.handlers.waiting(0, "");
    } catch (failure) {
      if (!(failure instanceof api.Unreachable)) throw failure;
      this.handlers.waiting((await this.entries()).length, failure.message);
      this.#timer = setTimeout(() => this.send(), this.#wait);
      this.#wait = Math.min(this.#wait * 2, longestWait);
    } finally {
      this.#sending = false;
    }
  }

  async #sendAll() {
    for (let entries = await this.entries(); entries.length > 0; entries = await this.entries()) {
      await this.#sendOne(entries[0]);
    }
  }

  async #sendOne(entry) {
    try {
      const ago = Math.max(0, (Date.now() - entry.made) / 1000) || 0;
      const answer = entry.blob
        ? await this.#sendPicture(entry, ago)
        : await api.say(entry.visit, { id: entry.id, by: entry.by, text: entry.text, answers: entry.answers ?? null, ago });
      await this.#drop(entry);
      this.handlers.taken(entry, answer);
    } catch (failure) {
      if (!(failure instanceof api.Refused)) throw failure;
      await this.#drop(entry);
      this.handlers.refused(entry, failure.message);
    }
  }

  /** In pieces, from where the last try stopped. */
  async #sendPicture(entry, ago) {
    const { size } = entry.blob;
    let state = await api.pictureState(entry.visit, entry.id);
    while (!state.picture) {
      const offset = state.received;
      const about = { offset, size, by: entry.by, caption: entry.caption, stop: entry.stop ?? "", ago };
      state = await api.picturePiece(entry.visit, entry.id, about, entry.blob.slice(offset, offset + pieceSize));
      if (!state.picture && state.received === offset) throw new api.Unreachable("The picture does not go on.");
      this.handlers.sent(entry, state.received / size);
    }
    return state;
  }

  async #drop(entry) {
    this.#unkept = this.#unkept.filter(other => other !== entry);
    if (entry.seq !== undefined) await store("outbox", "readwrite", outbox => outbox.delete(entry.seq));
  }
}
