// Copies a field with one press. Where the browser lets no page near the clipboard, the text is marked instead.

for (const button of document.querySelectorAll("[data-copy]")) {
  const field = document.getElementById(button.dataset.copy);
  const said = document.getElementById(`${button.dataset.copy}-said`);
  button.hidden = false;
  button.addEventListener("click", async () => {
    field.focus();
    field.select();
    let copied = false;
    try {
      await navigator.clipboard.writeText(field.value);
      copied = true;
    } catch {
      copied = document.execCommand("copy"); // plain http, as on a shop's own network
    }
    said.textContent = copied ? "Copied." : "Marked: copy it with Ctrl+C or ⌘C.";
  });
}
