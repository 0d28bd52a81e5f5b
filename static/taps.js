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
