// Puts what the server says of each field beside it, without touching what is typed.

const form = document.getElementById("unit");
const told = document.getElementById("told");
const trouble = document.getElementById("trouble");
const step = document.getElementById("step");
const turns = { undo: "past", redo: "ahead" };
let changed = false;
let typings = 0;
let opened = [];

const beside = () => {
  const said = document.getElementById("said");
  const list = document.getElementById("beside");
  if (!said || !list) return;
  const sayings = new Map([...list.querySelectorAll("[data-of]")].map((each) => [each.dataset.of, each]));
  for (const place of form.querySelectorAll(".said")) {
    const id = place.id.slice(0, -"-said".length);
    const saying = sayings.get(id);
    const field = document.getElementById(id);
    place.replaceChildren(...(saying ? [...saying.childNodes].map((node) => node.cloneNode(true)) : []));
    if (!field) continue;
    if (saying && "bad" in saying.dataset) field.setAttribute("aria-invalid", "true");
    else field.removeAttribute("aria-invalid");
  }
  for (const now of list.querySelectorAll("[data-now]")) {
    const place = document.getElementById(now.dataset.now);
    if (place) place.textContent = now.textContent;
  }
  told.textContent = said.querySelector(".telling")?.textContent ?? "";
};

const say = (sentence) => {
  trouble.textContent = sentence;
  trouble.hidden = !sentence;
};

// Which way one can go, by the steps that the form carries.
const allow = () => {
  for (const [act, held] of Object.entries(turns)) {
    const button = document.getElementById(act);
    const steps = form.querySelector(`[name="${held}"]`)?.value ?? "[]";
    if (steps === "[]" && document.activeElement === button) {
      button.disabled = true;
      form.querySelector(".turn:enabled")?.focus();
    }
    button.disabled = steps === "[]";
  }
};

document.addEventListener("htmx:before:swap", () => {
  opened = [...form.querySelectorAll("details[open]")].map((each) => each.id);
});

document.addEventListener("htmx:after:swap", (event) => {
  if (event.detail?.ctx?.swap === "none") return;
  allow();
  say("");
  document.getElementById("faults")?.remove();
  const source = event.target;
  if (source instanceof Element && source.id.startsWith("row-") || ["rows", "fields", ...Object.keys(turns)].includes(source.id)) {
    for (const id of opened) document.getElementById(id)?.setAttribute("open", "");
    if (document.activeElement === document.body) document.getElementById("row-add")?.focus();
    changed = true;
    step.value = "";
    form.dispatchEvent(new Event("work"));
    return;
  }
  beside();
});

document.addEventListener("htmx:response:error", (event) => {
  const status = event.detail?.ctx?.response?.status;
  if (status === 422) return;
  say(
    status === 401
      ? "You are not signed in any more. What you typed stands here: sign in on another page, then go on."
      : "This could not be worked out just now. What you typed stands here; go on, or try again in a moment.",
  );
});

document.addEventListener("htmx:error", (event) => {
  if (event.detail?.error?.name === "AbortError") return;
  say("The service does not answer. What you typed stands here; it is worked out as soon as it answers again.");
});

form.addEventListener("input", (event) => {
  changed = true;
  // What one goes on typing into one field is one step; leaving the field ends it.
  step.value = `${event.target.name} ${typings}`;
});
form.addEventListener("change", () => {
  typings += 1;
});
document.addEventListener("keydown", (event) => {
  const key = event.key.toLowerCase();
  if (!(event.ctrlKey || event.metaKey) || event.altKey || !["z", "y"].includes(key)) return;
  if (event.target.matches("textarea, input:not([type=checkbox], [type=radio])")) return; // the browser's own
  const act = key === "y" || event.shiftKey ? "redo" : "undo";
  event.preventDefault();
  document.getElementById(act).click();
});
form.addEventListener("submit", () => {
  changed = false;
});
window.addEventListener("beforeunload", (event) => {
  if (changed) event.preventDefault();
});

document.getElementById("faults")?.focus();
