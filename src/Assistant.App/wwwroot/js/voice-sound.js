// The phone's ear and mouth: the microphone in pieces of sound, and a voice that can be cut off.
const rate = 16000;

function whyNot(failure) {
  if (failure.name === "NotAllowedError") return "The microphone is not allowed for this page. Allow it in the browser's settings, or type: the chat goes on.";
  if (failure.name === "NotReadableError") return "Another program has the microphone. Close it, or type: the chat goes on.";
  return "There is no microphone. Plug one in, or type: the chat goes on.";
}

export class Ear {
  #take;
  #context = null;
  #stream = null;

  constructor(take) {
    this.#take = take;
  }

  /** Samples a second of what it gives. */
  get rate() {
    return this.#context?.sampleRate ?? rate;
  }

  /** Throws one line for people where there is no microphone or it may not be used. */
  async open() {
    if (this.#stream) return;
    if (!navigator.mediaDevices?.getUserMedia) throw new Error("The browser gives a microphone only to this machine or over TLS. The chat goes on.");
    // Gain that follows the sound would lift the fan between words and clip the first of them; the recogniser sets its own level.
    let stream;
    try {
      stream = await navigator.mediaDevices.getUserMedia({ audio: { channelCount: 1, echoCancellation: true, noiseSuppression: false, autoGainControl: false } });
    } catch (failure) {
      throw new Error(whyNot(failure));
    }
    this.#stream = stream;
    // Some browsers take a microphone only at its own rate.
    const source = await this.#source({ sampleRate: rate }).catch(() => this.#source({}));
    const worklet = new AudioWorkletNode(this.#context, "pcm", { numberOfOutputs: 0 });
    worklet.port.onmessage = event => this.#take(event.data);
    source.connect(worklet);
    await this.#context.resume();
  }

  async #source(options) {
    this.#context?.close();
    this.#context = new AudioContext(options);
    await this.#context.audioWorklet.addModule("/js/voice-worklet.js");
    return this.#context.createMediaStreamSource(this.#stream);
  }

  close() {
    this.#stream?.getTracks().forEach(track => track.stop());
    this.#context?.close();
    [this.#context, this.#stream] = [null, null];
  }
}

export class Mouth {
  #context = null;
  #source = null;
  #ended = null;

  /** Says a reply: the program's sound, or the browser's own voice where it has none. Ends when it is said or stopped. */
  async say({ say, sound }) {
    this.stop();
    if (!say) return;
    const over = new Promise(resolve => { this.#ended = resolve; });
    if (sound) {
      this.#context ??= new AudioContext();
      await this.#context.resume();
      const bytes = Uint8Array.from(atob(sound), letter => letter.charCodeAt(0));
      this.#source = new AudioBufferSourceNode(this.#context, { buffer: await this.#context.decodeAudioData(bytes.buffer) });
      this.#source.connect(this.#context.destination);
      this.#source.onended = () => this.#ended?.();
      this.#source.start();
    } else if (globalThis.speechSynthesis?.getVoices().length > 0) {
      const words = new SpeechSynthesisUtterance(say);
      words.lang = "en-US";
      words.onend = words.onerror = () => this.#ended?.();
      speechSynthesis.speak(words);
    } else {
      return; // Nothing here can speak: it stands on the screen.
    }
    await over;
  }

  stop() {
    this.#source?.stop();
    globalThis.speechSynthesis?.cancel();
    this.#ended?.();
    [this.#source, this.#ended] = [null, null];
  }
}
