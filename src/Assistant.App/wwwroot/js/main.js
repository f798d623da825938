// The page: what stands in the address decides what is shown. What the first question does not need is loaded when it is wanted.
import { byId, trouble } from "./dom.js";
import { StartScreen, personKey } from "./start.js";
import { startTheme } from "./theme.js";
import { VisitScreen } from "./visit.js";

const visit = new VisitScreen({ missing });

function go(address, show) {
  history.pushState(null, "", address);
  show();
}

/** What the address names is not there: back to the first screen, with one line that says so. */
async function missing(line) {
  visit.leave();
  history.replaceState(null, "", "/");
  await start.show();
  trouble(line);
}

const enter = (id, view) => go(`/?visit=${encodeURIComponent(id)}`, () => visit.enter(id, view));
const start = new StartScreen({ enter, unit: id => go(`/?unit=${encodeURIComponent(id)}`, route) });

async function route() {
  const address = new URLSearchParams(location.search);
  for (const dialog of document.querySelectorAll("dialog[open]")) dialog.close();
  if (address.get("visit")) {
    if (!localStorage.getItem(personKey)) import("./naming.js").then(naming => naming.askName());
    return visit.enter(address.get("visit"));
  }
  visit.leave();
  if (address.get("unit")) {
    const { showUnit } = await import("./unit.js");
    return showUnit(address.get("unit"), { enter, open: request => start.open(request), missing });
  }
  return start.show();
}

const say = entry => visit.enterReading(entry);
const sheets = {
  "show-readings": async () => {
    const { showReadings } = await import("./readings.js");
    showReadings(visit.view, correct);
    byId("readings").showModal();
  },
  "show-more": () => byId("more").showModal(),
  "other-reading": async () => (await import("./entry.js")).chooseReading(visit.view, say),
  "plots-open": async () => (await import("./plots.js")).openPlots(visit.view),
  "quick-open": async () => (await import("./quick.js")).openQuick(visit.view),
  "quick-start": async () => (await import("./quick.js")).openQuick(null),
  "share-open": async () => (await import("./share.js")).openShare(visit.view),
  "report-open": async () => (await import("./report.js")).openReport(visit.view),
  "voice-open": async () => (await import("./voice.js")).openVoice(visit.view),
  picture: () => byId("camera").click(),
};

async function correct(reading) {
  byId("readings").close();
  (await import("./entry.js")).enterReading(reading, say);
}

for (const [button, open] of Object.entries(sheets)) {
  byId(button).addEventListener("click", () => {
    if (byId("more").open && button !== "show-more") byId("more").close();
    open();
  });
}
byId("camera").addEventListener("change", async event => {
  const [file] = event.target.files;
  if (!file) return;
  await (await import("./picture.js")).captionPicture(file, picture => visit.picture(picture));
  event.target.value = "";
});
let units = null;
addEventListener("visit-shown", async event => {
  if (units !== event.detail.units) {
    units = event.detail.units;
    setTimeout(async () => (await import("./facts.js")).factsFor(units), 1000);
  }
  if (byId("readings").open) (await import("./readings.js")).showReadings(event.detail, correct);
});
for (const button of document.querySelectorAll("[data-close]")) {
  button.addEventListener("click", () => button.closest("dialog").close());
}
for (const id of ["leave", "unit-leave"]) {
  byId(id).addEventListener("click", () => go("/", route));
}
addEventListener("popstate", route);
startTheme();
await route();

// With the first question on the screen there is time for what works without a line: the page itself, and the tables.
if ("serviceWorker" in navigator) {
  await navigator.serviceWorker.register("/sw.js").catch(() => {});
  await navigator.serviceWorker.ready;
  const { fetchTables } = await import("./tables.js");
  await fetchTables();
}
