// Puts the text of a chosen file into the field for a unit file; the file itself is never sent.

const picked = document.getElementById("picked");
const text = document.getElementById("file");
document.getElementById("from-file").hidden = false;
picked.addEventListener("change", async () => {
  if (picked.files.length) text.value = await picked.files[0].text();
});
