// A bad line may bring the page in part. It then says so and loads itself again, instead of standing there blank.
const pause = 3000;

addEventListener("error", ({ target }) => {
  if (!(target instanceof HTMLScriptElement)) return;
  setTimeout(() => {
    const line = document.getElementById("trouble");
    line.textContent = "The page did not come whole over this line. It loads itself again.";
    line.hidden = false;
    setTimeout(() => location.reload(), pause);
  }, 0);
}, true);
