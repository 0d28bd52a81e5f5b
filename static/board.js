// Keeps a board on the wall fresh: the counts after each tap, and all of it once a minute while nobody touches it.
const MINUTE = 60_000;
let touched = 0;

async function fetched(block) {
  const answer = await fetch(document.getElementById("board").dataset.here, {
    headers: { "HX-Request": "true", "X-Block": block },
  });
  if (answer.redirected) location.reload();
  if (!answer.ok || answer.redirected) return null;
  const holder = document.createElement("template");
  holder.innerHTML = block === "counts" ? `<table>${await answer.text()}</table>` : await answer.text();
  return holder.content;
}

async function freshen(block) {
  const content = await fetched(block).catch(() => null);
  const here = document.activeElement?.id;
  const along = document.querySelector(".columns-of")?.scrollLeft;
  for (const id of block === "counts" ? ["counts"] : ["counts", "rows"]) {
    const fresh = content?.getElementById(id);
    if (!fresh) return;
    document.getElementById(id).replaceWith(fresh);
    globalThis.htmx?.process(fresh);
  }
  document.querySelector(".columns-of").scrollLeft = along;
  if (here && document.activeElement === document.body) document.getElementById(here)?.focus({ preventScroll: true });
}

for (const kind of ["pointerdown", "keydown"]) document.addEventListener(kind, () => (touched = Date.now()));
document.addEventListener("htmx:after:swap", (event) => {
  if (event.detail.ctx?.sourceElement?.closest?.("#clock")) return;
  freshen("counts");
});
setInterval(() => {
  const rests = Date.now() - touched > MINUTE / 3 && document.visibilityState === "visible";
  if (rests && document.getElementById("board")) freshen("table");
}, MINUTE);
