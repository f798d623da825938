// What was said and not yet taken is kept in the browser's own database, and sent again in order until it is.
import * as api from "./api.js";

const longestWait = 30000;

const opened = new Promise((resolve, reject) => {
  const request = indexedDB.open("coldwalk", 1);
  request.onupgradeneeded = () => request.result.createObjectStore("outbox", { keyPath: "seq", autoIncrement: true });
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

async function store(mode, work) {
  const database = await opened;
  return new Promise((resolve, reject) => {
    const transaction = database.transaction("outbox", mode);
    const request = work(transaction.objectStore("outbox"));
    transaction.oncomplete = () => resolve(request.result);
    transaction.onabort = transaction.onerror = () => reject(transaction.error);
  });
}

/** Keeps the entry, then tries to send. Where the browser keeps nothing, it is sent straight away. */
export class Outbox {
  #sending = false;
  #wait = 1000;
  #timer = 0;
  #unkept = [];

  /** handlers: taken(entry, view), refused(entry, line), waiting(count, line). */
  constructor(handlers) {
    this.handlers = handlers;
    addEventListener("online", () => this.send());
  }

  async add(entry) {
    try {
      await store("readwrite", outbox => outbox.add(entry));
    } catch {
      this.#unkept.push(entry);
    }
    this.#wait = 1000;
    await this.send();
  }

  async entries() {
    const kept = await store("readonly", outbox => outbox.getAll()).catch(() => []);
    return [...kept, ...this.#unkept];
  }

  async send() {
    if (this.#sending) return;
    this.#sending = true;
    clearTimeout(this.#timer);
    try {
      for (let entries = await this.entries(); entries.length > 0; entries = await this.entries()) {
        await this.#sendOne(entries[0]);
      }
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

  async #sendOne(entry) {
    try {
      const view = entry.blob
        ? await api.picture(entry.visit, entry)
        : await api.say(entry.visit, { id: entry.id, by: entry.by, text: entry.text });
      await this.#drop(entry);
      this.handlers.taken(entry, view);
    } catch (failure) {
      if (!(failure instanceof api.Refused)) throw failure;
      await this.#drop(entry);
      this.handlers.refused(entry, failure.message);
    }
  }

  async #drop(entry) {
    this.#unkept = this.#unkept.filter(other => other !== entry);
    if (entry.seq !== undefined) await store("readwrite", outbox => outbox.delete(entry.seq));
  }
}
