// Lets a running timer run on the page. The page was right when it was made; from then on the browser counts.
const begun = new WeakMap();

function show() {
  for (const each of document.querySelectorAll("[data-runs]")) {
    if (!begun.has(each)) begun.set(each, performance.now());
    const seconds = Number(each.dataset.seconds) + Math.floor((performance.now() - begun.get(each)) / 1000);
    const two = (number) => String(number).padStart(2, "0");
    each.textContent = `${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
  }
}

show();
setInterval(show, 1000);
