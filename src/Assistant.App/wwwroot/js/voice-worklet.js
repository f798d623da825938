// Gives the microphone's sound in pieces of 16-bit samples.
const piece = 1024;

class Pcm extends AudioWorkletProcessor {
  #samples = new Int16Array(piece);
  #count = 0;

  process([input]) {
    for (const sample of input[0] ?? []) {
      this.#samples[this.#count++] = Math.max(-1, Math.min(1, sample)) * 32767;
      if (this.#count === piece) {
        this.port.postMessage(this.#samples);
        this.#samples = new Int16Array(piece);
        this.#count = 0;
      }
    }
    return true;
  }
}

registerProcessor("pcm", Pcm);
