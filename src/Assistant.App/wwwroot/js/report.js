// The report in a frame of its own, and a line in its place where there is no signal: a browser's own page says nothing of the visit.
import { byId, show } from "./dom.js";

const patience = 5000;

export async function openReport(view) {
  const at = `/visits/${encodeURIComponent(view.id)}`;
  byId("report-pdf").href = `${at}/report.pdf`;
  showThere(true);
  byId("report-frame").removeAttribute("src");
  byId("report").showModal();
  const isThere = await fetch("/health/live", { cache: "no-store", signal: AbortSignal.timeout(patience) }).then(() => true, () => false);
  showThere(isThere);
  if (isThere) byId("report-frame").src = `${at}/report.html`;
}

function showThere(isThere) {
  show(byId("report-missing"), !isThere);
  for (const part of ["report-frame", "report-pdf"]) show(byId(part), isThere);
}
