// The plots the readings give, folded, each with the same in words below.
import * as api from "./api.js";
import { byId, make } from "./dom.js";

/** The drawing takes the page's colours, by day and by night; it says the same to who can not see it. */
function drawn({ svg }) {
  return document.importNode(new DOMParser().parseFromString(svg, "image/svg+xml").documentElement, true);
}

export async function openPlots(view) {
  const list = byId("plots-list");
  list.replaceChildren(make("p", { textContent: "Drawing ..." }));
  byId("plots").showModal();
  try {
    const plots = await api.plots(view.id);
    list.replaceChildren(...plots.map((plot, index) => make("details", { open: index === 0 },
      make("summary", { textContent: plot.title }),
      drawn(plot),
      make("p", { textContent: plot.alt }))));
    if (plots.length === 0) list.append(make("p", { textContent: "The readings so far give no plot. Both pressures and the line temperatures give the cycle; a reading repeated over time gives its course." }));
  } catch (failure) {
    list.replaceChildren(make("p", { textContent: failure.message }));
  }
}
