// The call by voice: push to talk, or hands free. What is heard goes to this program alone, and onto the visit only once it is confirmed.
import { make, newId, show } from "./dom.js";
import { person } from "./start.js";
import { Ear, Mouth } from "./voice-sound.js";

const echo = 250; // ms its own sound may stay in the room
const tail = 300; // ms of sound still on its way when the thumb lifts
const longest = 12000; // ms of one answer
const names = {
  ready: "Ready", off: "Voice is off", listening: "Listening", hearing: "Hearing you", thinking: "Thinking", speaking: "Speaking",
  asleep: "Say “coldwalk”", waiting: "Say “continue”",
};

class VoicePanel {
  #panel = make("dialog", { id: "voice", className: "voice" });
  #state = make("p", { id: "voice-state", className: "voice-state" });
  #said = make("p", { id: "voice-said", className: "voice-said" });
  #heard = make("p", { id: "voice-heard", className: "voice-heard" });
  #note = make("p", { id: "voice-note", className: "voice-note", hidden: true });
  #hold = make("button", { type: "button", id: "voice-hold", className: "main", textContent: "Hold to talk" });
  #free = make("button", { type: "button", id: "voice-free", textContent: "Hands free" });
  #leave = make("button", { type: "button", id: "voice-leave", textContent: "Back to chat" });
  #mouth = new Mouth();
  #ear = new Ear(piece => this.#take(piece));
  #visit = null;
  #talk = null;
  #pieces = [];
  #isHeld = false;
  #isFree = false;
  #isSpeaking = false;
  #isBusy = false;
  #deafUntil = 0;
  #letGo = 0;
  #running = Promise.resolve();

  constructor() {
    this.#panel.setAttribute("aria-label", "Voice");
    for (const line of [this.#state, this.#note]) line.setAttribute("role", "status");
    this.#panel.append(this.#state, this.#said, this.#heard, this.#note, make("div", { className: "voice-buttons" }, this.#hold, this.#free, this.#leave));
    document.body.append(this.#panel);
    this.#hold.addEventListener("pointerdown", event => { this.#hold.setPointerCapture(event.pointerId); this.#press(); });
    for (const end of ["pointerup", "pointercancel"]) this.#hold.addEventListener(end, () => this.#release());
    this.#hold.addEventListener("keydown", event => { if ([" ", "Enter"].includes(event.key) && !event.repeat) this.#press(); });
    this.#hold.addEventListener("keyup", event => { if ([" ", "Enter"].includes(event.key)) this.#release(); });
    this.#hold.addEventListener("contextmenu", event => event.preventDefault());
    this.#free.addEventListener("click", () => this.#setFree(!this.#isFree));
    this.#leave.addEventListener("click", () => this.#panel.close());
    this.#panel.addEventListener("close", () => this.#closed());
  }

  async open(visit) {
    [this.#visit, this.#talk, this.#isBusy] = [visit, newId(), false];
    this.#panel.showModal();
    [this.#heard.textContent, this.#said.textContent] = ["", ""];
    this.#tell("");
    this.#set("thinking");
    await this.#listen();
    await this.#turn(() => this.#send("start"));
  }

  #closed() {
    this.#talk = null;
    [this.#isFree, this.#isHeld, this.#isSpeaking] = [false, false, false];
    this.#free.setAttribute("aria-pressed", false);
    this.#mouth.stop();
    this.#ear.close();
  }

  async #listen() {
    try {
      await this.#ear.open();
      if (!this.#talk) this.#ear.close();
      return true;
    } catch (failure) {
      this.#tell(failure.message);
      return false;
    }
  }

  async #send(what, sound) {
    const about = new URLSearchParams({ by: person(), rate: this.#ear.rate });
    let response;
    try {
      response = await fetch(`/api/visits/${encodeURIComponent(this.#visit)}/voice/${this.#talk}/${what}${what.includes("?") ? "&" : "?"}${about}`, {
        method: "POST", credentials: "same-origin", headers: sound ? { "Content-Type": "application/octet-stream" } : {}, body: sound,
      });
    } catch {
      throw new Error("The program does not answer: no voice without it. The chat goes on.");
    }
    const body = await response.json().catch(() => ({}));
    if (!response.ok) throw new Error(body.error ?? `The program does not hear just now (code ${response.status}). The chat goes on.`);
    return body;
  }

  /** One thing at a time: a question to the program, and saying its answer. */
  #turn(ask) {
    if (!this.#isBusy) this.#running = this.#run(ask);
    return this.#running;
  }

  async #run(ask) {
    const talk = this.#talk;
    this.#isBusy = true;
    try {
      let view = await ask();
      while (view && talk === this.#talk) view = await this.#answered(view);
    } catch (failure) {
      if (talk !== this.#talk) return;
      this.#setFree(false);
      this.#tell(failure.message);
      this.#set("off");
    } finally {
      if (talk === this.#talk) this.#isBusy = false;
    }
  }

  async #answered(view) {
    if (!view.turn) {
      this.#rest(view);
      return null;
    }
    if (view.heard) this.#heard.textContent = `“${view.heard}”`;
    if (view.note) this.#tell(view.note);
    let next = null;
    if (view.say) {
      this.#said.textContent = view.say;
      this.#set("speaking");
      [this.#isSpeaking, this.#pieces] = [true, []];
      const saying = this.#mouth.say(view).finally(() => { this.#isSpeaking = false; });
      next = await this.#overhear(saying);
      await saying;
      this.#deafUntil = performance.now() + echo;
      if (!this.#isHeld) this.#pieces = [];
    }
    this.#rest(view);
    return next;
  }

  // While it speaks, what is heard can only stop it or change how it speaks.
  async #overhear(saying) {
    while (this.#isSpeaking && this.#isFree) {
      const piece = this.#pieces.shift();
      if (!piece) {
        await Promise.race([saying, new Promise(resolve => setTimeout(resolve, 100))]);
        continue;
      }
      const view = await this.#send("piece?speaking=true", piece);
      if (view.stops) {
        this.#mouth.stop();
        return view;
      }
    }
    return null;
  }

  #rest(view) {
    const asleep = { wakeword: "asleep", resuming: "waiting" }[view.phase];
    this.#set(this.#isHeld ? "listening" : !this.#isFree ? "ready" : view.speech ? "hearing" : asleep ?? "listening");
  }

  #take(piece) {
    if (this.#isHeld) {
      this.#pieces.push(piece);
    } else if (this.#isFree && performance.now() >= this.#deafUntil) {
      this.#pieces.push(piece);
      if (this.#isBusy) return;
      const sound = new Blob(this.#pieces);
      this.#pieces = [];
      this.#turn(() => this.#send("piece", sound));
    }
  }

  async #press() {
    if (this.#isFree) this.#setFree(false);
    this.#mouth.stop();
    [this.#isHeld, this.#pieces] = [true, []];
    if (!await this.#listen()) {
      this.#isHeld = false;
      return this.#set("off");
    }
    if (this.#isHeld) this.#set("listening");
    this.#letGo = setTimeout(() => this.#release(), longest);
  }

  #release() {
    if (!this.#isHeld) return;
    clearTimeout(this.#letGo);
    setTimeout(async () => {
      if (!this.#isHeld) return;
      this.#isHeld = false;
      const sound = new Blob(this.#pieces);
      this.#pieces = [];
      if (sound.size === 0) return this.#set("ready");
      await this.#running;
      this.#set("thinking");
      this.#turn(() => this.#send("utterance", sound));
    }, tail);
  }

  async #setFree(isFree) {
    this.#isFree = isFree;
    this.#pieces = [];
    this.#free.setAttribute("aria-pressed", isFree);
    // The microphone is open only while it is wanted.
    if (!isFree) this.#ear.close();
    else if (!await this.#listen()) return this.#setFree(false);
    if (!this.#isBusy) this.#set(isFree ? "listening" : "ready");
  }

  #set(state) {
    this.#panel.dataset.state = state;
    this.#state.textContent = names[state];
  }

  #tell(line) {
    this.#note.textContent = line;
    show(this.#note, line !== "");
  }
}

let panel = null;

/** Opens the call by voice over the visit. */
export async function openVoice(visit) {
  if (!panel) {
    const styles = make("link", { rel: "stylesheet", href: "/css/voice.css" });
    const loaded = new Promise(resolve => { styles.onload = styles.onerror = resolve; });
    document.head.append(styles);
    await loaded;
    panel = new VoicePanel();
  }
  await panel.open(visit.id);
}
