// Sizes without typing: buttons step a size by 1/64 in or half a millimetre, or take it as it was drawn.
const MILLIMETRES = 25.4;
const UNREAD = "The buttons cannot step what is written here; it stays as it is.";
const SIZE = /^(?:(\d+) ?(?:'|ft) ?-? ?)?(?:(?:(\d+)[ -])?(\d+)\/(\d+)|(\d*\.?\d+))? ?(mm|cm|in|")?$/;
const COMMA = /^(\d+),(\d{1,2})(?= ?(?:mm|cm)?$)/;

showButtons();
document.addEventListener("htmx:after:swap", showButtons); // a tap can bring the sizes to another place

function showButtons() {
  for (const button of document.querySelectorAll("button.by")) button.hidden = false;
}

document.addEventListener("click", (event) => {
  const button = event.target.closest?.("button.by");
  if (!button) return;
  const field = document.getElementById(button.dataset.for);
  const size = "drawn" in button.dataset ? button.dataset.drawn.replace("≈", "") : stepped(field, Number(button.dataset.step));
  if (size !== null) field.value = size;
  field.dispatchEvent(new Event("input", { bubbles: true }));
  if (size === null) told(field).value = UNREAD;
});

document.addEventListener("input", ({ target }) => {
  if (told(target)) told(target).value = "";
});

function told(field) {
  return document.getElementById(`${field.id}-told`);
}

/** The next size up or down; null where what stands in the field cannot be read, which is not thrown away. */
function stepped(field, step) {
  const metric = field.dataset.unit === "mm";
  const text = field.value.trim();
  const from = text ? inches(text, metric) : Number(field.dataset.inches);
  if (from === null) return null;
  const steps = Math.round(from / Math.abs(step)) + Math.sign(step);
  return written(Math.max(0, steps) * Math.abs(step), metric);
}

/** A size as most people write it; anything else is left to the service, which reads more. */
function inches(text, metric) {
  const plain = text
    .toLowerCase()
    .replace(/[¼½¾⅛⅜⅝⅞]/g, (sign) => ` ${sign.normalize("NFKC").replace("⁄", "/")}`)
    .replace(/[’′]/g, "'")
    .replace(/[”″]|''/g, '"')
    .replace(/\s+/g, " ")
    .trim();
  const parts = SIZE.exec(metric ? plain.replace(COMMA, "$1.$2") : plain);
  if (!parts) return null;
  const [, feet, whole, above, below, decimal, word] = parts;
  const beside = above ? Number(above) / Number(below) : 0;
  const size = Number(whole ?? decimal ?? 0) + beside;
  if (!Number.isFinite(size) || (whole && beside >= 1) || !(feet || above || decimal)) return null;
  const unit = word ?? (metric && !above && !feet ? "mm" : "in");
  const inMetric = unit === "mm" || unit === "cm";
  if (feet && (inMetric || size >= 12)) return null;
  return Number(feet ?? 0) * 12 + (inMetric ? (size * (unit === "cm" ? 10 : 1)) / MILLIMETRES : size);
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
