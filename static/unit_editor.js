// Puts what the server says of each field beside it, without touching what is typed.

const form = document.getElementById("unit");
const told = document.getElementById("told");
const trouble = document.getElementById("trouble");
const step = document.getElementById("step");
const turns = { undo: "past", redo: "ahead" };
let changed = false;
let typings = 0;
let opened = [];
let held = "";

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
    if (place) place.replaceChildren(...[...now.childNodes].map((node) => node.cloneNode(true)));
  }
  for (const called of list.querySelectorAll("[data-called]")) {
    const field = document.getElementById(called.dataset.called);
    if (!field) continue;
    field.setAttribute("aria-label", called.textContent);
    const name = called.textContent.split(": ").at(-1);
    const cell = field.closest("[data-label]");
    if (cell) cell.dataset.label = name.charAt(0).toUpperCase() + name.slice(1);
  }
  for (const drawn of (list.querySelector("[data-drawn]")?.textContent ?? "").split(";")) {
    const [code, ...sizes] = drawn.split("|");
    for (const [place, name] of ["height", "width", "depth"].entries()) {
      const field = document.getElementById(`measured-${code}-${name}`);
      if (field) field.placeholder = sizes[place] ?? "";
    }
  }
  told.textContent = said.querySelector(".telling")?.textContent ?? "";
};

const say = (sentence) => {
  trouble.textContent = sentence;
  trouble.hidden = !sentence;
};

// With this script everything is worked out as it is typed.
document.getElementById("work-out").hidden = true;
form.querySelector(".keys").hidden = false;

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

// What was open and where the caret was, for the parts that are exchanged whole.
document.addEventListener("htmx:before:swap", () => {
  opened = [...document.querySelectorAll(".workbench details[open]")].map((each) => each.id);
  held = document.activeElement?.id ?? "";
});

const restore = () => {
  for (const id of opened) document.getElementById(id)?.setAttribute("open", "");
  if (document.activeElement !== document.body) return;
  const again = document.getElementById(held);
  if (again && !again.disabled) again.focus({ preventScroll: true });
  else document.getElementById("row-add")?.focus({ preventScroll: true });
};

document.addEventListener("htmx:after:swap", (event) => {
  const ctx = event.detail?.ctx;
  if (ctx?.swap === "none") return;
  allow();
  restore();
  mark();
  say("");
  document.getElementById("faults")?.remove();
  if (ctx?.target?.id === "fields") {
    changed = true;
    step.value = "";
    // Not at once: it would take the place of the exchange that is still under way.
    setTimeout(() => form.dispatchEvent(new Event("work")), 30);
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

// Which drawing is looked at holds at once: what is worked out meanwhile must not bring the other one back.
const tabs = [...document.querySelectorAll("[name=show]")];
for (const tab of tabs) {
  tab.addEventListener("click", () => {
    for (const each of tabs) each.setAttribute("aria-pressed", String(each === tab));
    for (const view of document.querySelectorAll("input[name=view]")) view.value = tab.value;
  });
}

// What is chosen in the drawing, in the list and in the form is one and the same.
const wide = matchMedia("(min-width: 60rem), (min-width: 48rem) and (min-height: 56rem)"); // as in the style sheet
const rowOf = (mark) =>
  mark && form.querySelector(`tr[data-mark="${mark}"], tr[data-mark="${mark.slice(0, mark.lastIndexOf("-"))}"]`);

const mark = () => {
  const at = document.getElementById("at");
  const place = at?.selectedOptions[0];
  for (const each of document.querySelectorAll("a[data-pick].picked, tr.picked")) each.classList.remove("picked");
  if (!at?.value) return;
  document.querySelector(`a[data-pick="R${at.value}"]`)?.classList.add("picked");
  rowOf(at.value)?.classList.add("picked");
  document.getElementById("to-fields").href = `#${place.dataset.field}`;
  document.getElementById("to-measured").href = `#measured-R${at.value}-height`;
};

const choose = (code) => {
  const at = document.getElementById("at");
  if ([...at.options].some((each) => each.value === code)) at.value = code;
  document.getElementById("changes").open = true;
  mark();
};

const goTo = (id, caret) => {
  const field = document.getElementById(id);
  if (!field) return;
  const row = field.closest("tr[data-more]")?.dataset.more;
  const folded = row ? document.getElementById(`more-${row}`) : field.closest("details");
  if (folded) folded.open = true;
  field.scrollIntoView({ block: "center" });
  if (!caret) return;
  field.focus({ preventScroll: true });
  if (field.select) field.select();
};

document.addEventListener("click", (event) => {
  const pick = event.target.closest?.("a[data-pick]");
  const own = event.target.closest?.("#to-fields, #to-measured, .findings a[href^='#'], #said a[href^='#']");
  if (own) {
    event.preventDefault();
    goTo(own.hash.slice(1), true);
  }
  if (!pick) return;
  event.preventDefault();
  const opening = /^R\d+-/.test(pick.dataset.pick);
  if (opening) choose(pick.dataset.pick.slice(1));
  // A key keeps its place in the drawing, from where the changes are near; a finger brings up no keyboard.
  const caret = !opening || (event.detail > 0 && event.pointerType !== "touch");
  if (wide.matches || !opening) goTo(pick.getAttribute("href").slice(1), caret);
});
document.addEventListener("change", (event) => {
  if (event.target.id !== "at") return;
  mark();
  if (wide.matches) rowOf(event.target.value)?.scrollIntoView({ block: "center" });
});
form.addEventListener("focusin", (event) => {
  const at = document.getElementById("at");
  const line = event.target.closest("tr[data-mark]")?.dataset.mark;
  if (!line || at.value === line || at.value.startsWith(`${line}-`)) return;
  const first = [...at.options].find((each) => each.value === line || each.value.startsWith(`${line}-`));
  if (first) at.value = first.value;
  mark();
});
mark();

form.addEventListener("input", (event) => {
  changed = true;
  const remark = document.getElementById("remark");
  if (remark) remark.value = "";
  // What one goes on typing into one field is one step; leaving the field ends it.
  step.value = `${event.target.name} ${typings}`;
});
form.addEventListener("change", () => {
  typings += 1;
});
document.addEventListener("keydown", (event) => {
  const key = event.key.toLowerCase();
  if (!(event.ctrlKey || event.metaKey) || event.altKey || !["s", "z", "y"].includes(key)) return;
  if (key === "s") {
    event.preventDefault();
    document.getElementById("save").click();
    return;
  }
  if (event.target.matches("textarea, input:not([type=checkbox], [type=radio])")) return; // the browser's own
  const act = key === "y" || event.shiftKey ? "redo" : "undo";
  event.preventDefault();
  document.getElementById(act).click();
});
form.addEventListener("submit", (event) => {
  if (event.submitter?.id === "enter") {
    // Enter in a field: it is worked out in place, and the page stays where it is.
    event.preventDefault();
    form.dispatchEvent(new Event("work"));
    return;
  }
  changed = false;
});
window.addEventListener("beforeunload", (event) => {
  if (changed) event.preventDefault();
});

document.getElementById("faults")?.focus();
