// A tap whose answer is a whole page (signed out, database busy, a fault) is sent again as a plain form, so that
// the person sees that page. The form carries the mark of the tap, so it counts once all the same.
document.addEventListener("htmx:before:swap", (event) => {
  const { ctx } = event.detail;
  const form = ctx?.sourceElement;
  if (!(form instanceof HTMLFormElement) || !/^\s*<!doctype/i.test(ctx.text ?? "")) return;
  event.preventDefault();
  const button = ctx.submitter ?? ctx.sourceEvent?.submitter;
  if (button?.name) {
    const held = document.createElement("input");
    held.type = "hidden";
    held.name = button.name;
    held.value = button.value;
    form.append(held);
  }
  keepBeside(form);
  form.submit();
});

document.addEventListener("htmx:error", () => tell("That was not sent: no connection. Tap again."));
document.addEventListener("htmx:after:swap", () => tell(""));

function tell(words) {
  const place = document.getElementById("unsent");
  if (!place) return;
  place.textContent = words;
  place.hidden = !words;
}

// What is typed and not sent stays in its field, though a tap elsewhere changes the page around it.
const UNSENT = "unsent at the bench";
let typed = [];
let opened = [];

document.addEventListener("htmx:before:swap", () => {
  typed = unsent();
  opened = [...document.querySelectorAll("details[data-stays][open]")].map((each) => each.id);
});
document.addEventListener("htmx:after:swap", () => {
  for (const id of opened) document.getElementById(id)?.setAttribute("open", "");
  bringBack(typed);
});
document.addEventListener("submit", (event) => {
  if (!event.defaultPrevented) keepBeside(event.target);
});
bringBack(keptBeside());

function unsent() {
  const fields = [...document.querySelectorAll("main :is(input:not([type=hidden]), textarea)[id]")];
  return fields.filter((each) => each.value !== each.defaultValue).map((each) => [each.id, each.value]);
}

function bringBack(values) {
  for (const [id, value] of values) {
    const field = document.getElementById(id);
    if (!field || field.value === value) continue;
    field.value = value;
    field.closest("details")?.setAttribute("open", "");
  }
}

/** Keeps what stands unsent in other forms, for the page that comes back when this one is sent. */
function keepBeside(form) {
  const others = unsent().filter(([id]) => !form.contains(document.getElementById(id)));
  try {
    sessionStorage.setItem(UNSENT, JSON.stringify([heading(), others]));
  } catch {
    // A full or closed store: nothing can be kept.
  }
}

function keptBeside() {
  try {
    const [of, values] = JSON.parse(sessionStorage.getItem(UNSENT)) ?? [];
    sessionStorage.removeItem(UNSENT);
    return of === heading() ? values : [];
  } catch {
    return [];
  }
}

function heading() {
  return document.querySelector("h1")?.textContent;
}

// A touch that bounces comes twice. After a swap another button may lie under the finger, with a mark of its own:
// for a moment a press at the same place, or on the next stage, does not count.
const REST = 800; // ms
const NEAR = 48; // px
let pressed = { x: 0, y: 0 };
let swapped = -Infinity;

for (const swap of ["htmx:before:swap", "htmx:after:swap"]) {
  document.addEventListener(swap, () => (swapped = performance.now()));
}
// Whoever has typed since has lifted the finger: what is pressed then is meant.
document.addEventListener("input", () => (pressed = { x: -NEAR, y: -NEAR }));
document.addEventListener(
  "click",
  (event) => {
    const target = event.target.closest?.("main :is(button, a, summary)");
    if (!target) return;
    const isNear = Math.hypot(event.clientX - pressed.x, event.clientY - pressed.y) < NEAR;
    if (performance.now() - swapped < REST && (isNear || target.id === "next")) {
      event.preventDefault();
      event.stopImmediatePropagation();
    } else pressed = { x: event.clientX, y: event.clientY };
  },
  { capture: true },
);

// Whoever goes by the keyboard stays at the line that was tapped, though its button is gone.
let focused = "";

document.addEventListener("htmx:before:swap", () => (focused = document.activeElement?.id ?? ""));
document.addEventListener("htmx:after:swap", () => {
  if (!focused || document.activeElement !== document.body) return;
  const line = focused.slice(2);
  const ways = [focused, "next", `n-${line}`, `l-${line}`].map((id) => document.getElementById(id));
  ways.find((each) => each)?.focus({ preventScroll: true });
});
