// Sizes without typing: buttons step a size by 1/64 in or half a millimetre, or take it as it was drawn.
const MILLIMETRES = 25.4;

showButtons();
document.addEventListener("htmx:after:swap", showButtons); // a tap can bring the sizes to another place

function showButtons() {
  for (const button of document.querySelectorAll("button.by")) button.hidden = false;
}

document.addEventListener("click", (event) => {
  const button = event.target.closest?.("button.by");
  if (!button) return;
  const field = document.getElementById(button.dataset.for);
  if ("drawn" in button.dataset) field.value = button.dataset.drawn.replace("≈", "");
  else field.value = stepped(field, Number(button.dataset.step));
  field.dispatchEvent(new Event("input", { bubbles: true }));
});

function stepped(field, step) {
  const metric = field.dataset.unit === "mm";
  const typed = inches(field.value.trim(), metric);
  const from = typed ?? Number(field.dataset.inches);
  const steps = Math.round(from / Math.abs(step)) + Math.sign(step);
  return written(Math.max(0, steps) * Math.abs(step), metric);
}

/** A size as these buttons write it, or as most people do; anything else is left to the service. */
function inches(text, metric) {
  const parts = /^(?:(\d+(?:\.\d+)?))?(?:[ -]?(\d+)\/(\d+))?\s*(mm|in|")?$/.exec(text);
  if (!text || !parts || (parts[1] === undefined && parts[2] === undefined)) return null;
  if (parts[3] === "0") return null;
  const size = Number(parts[1] ?? 0) + (parts[2] ? Number(parts[2]) / Number(parts[3]) : 0);
  return parts[4] === "mm" || (metric && !parts[4]) ? size / MILLIMETRES : size;
}

function written(size, metric) {
  if (metric) return (size * MILLIMETRES).toFixed(1);
  let parts = Math.round(size * 64);
  let by = 64;
  const whole = Math.floor(parts / by);
  parts -= whole * by;
  if (!parts) return String(whole);
  while (parts % 2 === 0) [parts, by] = [parts / 2, by / 2];
  return whole ? `${whole}-${parts}/${by}` : `${parts}/${by}`;
}
