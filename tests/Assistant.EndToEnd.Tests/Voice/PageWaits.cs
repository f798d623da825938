using Microsoft.Playwright;

namespace Assistant.EndToEnd.Tests.Voice;

/// <summary>Notes in the page when the last loud 10 ms came out of the microphone, and when the next reply began to sound.</summary>
internal static class PageWaits
{
    public static Task NoteAsync(IPage page) => page.EvaluateAsync(
        """
        () => {
          const frame = 160;
          let floor = 0, frames = 0, last = 0, previous = 0;
          globalThis.waits = [];
          performance.setResourceTimingBufferSize(5000);
          const Native = globalThis.AudioWorkletNode;
          globalThis.AudioWorkletNode = class extends Native {
            constructor(...given) {
              super(...given);
              [floor, frames, last] = [0, 0, 0];
              this.port.addEventListener("message", ({ data }) => {
                const came = performance.now();
                for (let at = 0; at + frame <= data.length; at += frame) {
                  let power = 0;
                  for (let i = at; i < at + frame; i++) {
                    power += (data[i] - previous) ** 2;
                    previous = data[i];
                  }
                  if (++frames <= 40) floor = Math.max(floor, power);
                  else if (power > 4 * floor) last = came - (data.length - at - frame) / 16;
                }
              });
            }
          };
          const start = AudioBufferSourceNode.prototype.start;
          AudioBufferSourceNode.prototype.start = function (...given) {
            const asked = performance.getEntriesByType("resource").filter(entry => entry.name.includes("/piece")).at(-1);
            if (last > 0 && asked) globalThis.waits.push([asked.startTime, asked.responseEnd, performance.now()].map(at => (at - last) / 1000));
            last = 0;
            return start.apply(this, given);
          };
        }
        """);

    /// <summary>For each reply since, seconds from the last word until the piece of sound that ended it was sent, until the answer had come, and until it began to sound.</summary>
    public static Task<double[][]> SoFarAsync(IPage page) => page.EvaluateAsync<double[][]>("() => globalThis.waits");
}
