// The page: which visit stands in the address decides what is shown.
import { byId } from "./dom.js";
import { StartScreen } from "./start.js";
import { startTheme } from "./theme.js";
import { VisitScreen } from "./visit.js";

const visitScreen = new VisitScreen();
const startScreen = new StartScreen((id, view) => {
  history.pushState(null, "", `?visit=${encodeURIComponent(id)}`);
  visitScreen.enter(id, view);
});

function route() {
  const id = new URLSearchParams(location.search).get("visit");
  if (id) visitScreen.enter(id);
  else startScreen.show();
}

for (const [button, dialog] of [["show-readings", "readings"], ["show-more", "more"]]) {
  byId(button).addEventListener("click", () => byId(dialog).showModal());
}
for (const button of document.querySelectorAll("[data-close]")) {
  button.addEventListener("click", () => button.closest("dialog").close());
}
byId("leave").addEventListener("click", () => {
  byId("more").close();
  history.pushState(null, "", "/");
  route();
});
addEventListener("popstate", route);
startTheme();
route();
