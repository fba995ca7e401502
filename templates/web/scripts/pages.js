// What every page does besides its plain forms. Without it all of it still works.

// After a form came back with faults, the summary is read out and the keyboard stands there.
const faults = document.getElementById("faults");
if (faults) faults.focus();

// A form is sent once, however often the button is pressed.
document.addEventListener("submit", (event) => {
  const form = event.target;
  if (form.dataset.sent) {
    event.preventDefault();
    return;
  }
  if (form.method === "post" && !form.hasAttribute("hx-post")) form.dataset.sent = "yes";
});
window.addEventListener("pageshow", () => {
  for (const form of document.querySelectorAll("form[data-sent]")) delete form.dataset.sent;
});

// Tell of a list that is sorted or filtered as soon as something is chosen.
for (const chooser of document.querySelectorAll("form[data-at-once]")) {
  chooser.addEventListener("change", () => chooser.requestSubmit());
}
