// Day or night: the system's choice until the technician presses; then theirs, also on the next visit.
const key = "coldwalk.theme";

function current() {
  return localStorage.getItem(key) ?? (matchMedia("(prefers-color-scheme: dark)").matches ? "night" : "day");
}

function apply(theme) {
  document.documentElement.dataset.theme = theme;
  for (const button of document.querySelectorAll("[data-theme-switch]")) {
    button.textContent = theme === "night" ? "Day" : "Night";
    button.setAttribute("aria-label", theme === "night" ? "Day colours" : "Night colours");
  }
}

export function startTheme() {
  apply(current());
  for (const button of document.querySelectorAll("[data-theme-switch]")) {
    button.addEventListener("click", () => {
      localStorage.setItem(key, current() === "night" ? "day" : "night");
      apply(current());
    });
  }
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => apply(current()));
}
