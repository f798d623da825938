// What happens on the visit, as it happens. After a lost line the last entry seen is named, and what was missed comes, nothing twice.
const again = 4000;

/** The program says something every few seconds; a line that is silent for longer is dead, whatever the phone believes. */
const longestSilence = 15000;

export class Live {
  #source = null;
  #timer = 0;
  #id = null;
  #last = 0;

  /** handlers: turn(turn), picture(picture), visit(view), line(isThere). */
  constructor(handlers) {
    this.handlers = handlers;
    addEventListener("offline", () => this.#lost());
    addEventListener("online", () => this.#id && this.open(this.#id, this.#last));
  }

  open(id, after) {
    this.close();
    [this.#id, this.#last] = [id, after];
    const source = new EventSource(`/api/visits/${encodeURIComponent(id)}/events?after=${after}`);
    this.#source = source;
    for (const kind of ["turn", "picture", "visit", "quiet"]) {
      source.addEventListener(kind, event => {
        if (source !== this.#source) return;
        this.#last = Number(event.lastEventId) || this.#last;
        this.#alive();
        this.handlers[kind]?.(JSON.parse(event.data));
      });
    }
    source.onerror = () => source === this.#source && this.#lost();
    this.#alive(false);
  }

  close() {
    clearTimeout(this.#timer);
    this.#source?.close();
    [this.#source, this.#id] = [null, null];
  }

  #alive(isThere = true) {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#lost(), longestSilence);
    if (isThere) this.handlers.line(true);
  }

  #lost() {
    const [id, last] = [this.#id, this.#last];
    if (!id) return;
    this.close();
    this.handlers.line(false);
    this.#id = id;
    this.#timer = setTimeout(() => this.open(id, last), again);
  }
}
