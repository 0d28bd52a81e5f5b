// Keeps what is typed into a form in this tab, so that a reload, a way back or a lost sign-in loses nothing.
// <form data-draft="a name of its own" data-draft-to="where it is shown again without being saved">; it has
// data-draft-shown where the page is the answer to what was typed, such as a save that was refused.

const form = document.querySelector("form[data-draft]");
const key = `draft ${form.dataset.draft}`;
const steers = new Set(["do", "once", "show", "view"]);
// What the form carries beside what was typed: it differs from page to page where nothing else does.
const carried = new Set(["version", "step", "was", "past", "ahead", "follows", "at", "into", "to", "remark"]);

const typed = () => [...new FormData(form)].filter(([name]) => !steers.has(name));
const said = (pairs) => JSON.stringify(pairs.filter(([name]) => !carried.has(name)).sort());
const isSame = (one, other) => said(one) === said(other);

const kept = () => {
  try {
    return JSON.parse(sessionStorage.getItem(key));
  } catch {
    return null;
  }
};
const keep = () => {
  try {
    sessionStorage.setItem(key, JSON.stringify(typed()));
  } catch {
    // A full or closed store: the form itself still holds what was typed.
  }
};

const bringBack = (pairs) => {
  const way = document.createElement("form");
  way.method = "post";
  way.action = form.dataset.draftTo;
  way.hidden = true;
  for (const [name, value] of pairs) {
    const field = document.createElement("textarea");
    field.name = name;
    field.value = value;
    way.append(field);
  }
  document.body.append(way);
  way.submit();
};

const button = (words, act) => {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = words;
  made.addEventListener("click", act);
  return made;
};

const offer = (pairs) => {
  const note = document.createElement("div");
  note.className = "note";
  const words = document.createElement("p");
  words.textContent = "You typed something here that was not saved.";
  const acts = document.createElement("p");
  acts.className = "acts";
  acts.append(
    button("Bring it back", () => bringBack(pairs)),
    button("Let it go", () => {
      sessionStorage.removeItem(key);
      note.remove();
    }),
  );
  note.append(words, acts);
  form.before(note);
};

const here = new URL(location.href);
if (here.searchParams.get("said") === "saved") {
  sessionStorage.removeItem(key);
  // The address must not say so again: a reload would throw away what was typed since.
  here.searchParams.delete("said");
  history.replaceState(history.state, "", here);
}
const draft = kept();
if ("draftShown" in form.dataset) keep();
else if (draft && !isSame(draft, typed())) offer(draft);

let waits;
for (const name of ["input", "work"]) {
  form.addEventListener(name, () => {
    clearTimeout(waits);
    waits = setTimeout(keep, 400);
  });
}
