// Before somebody signs out, what this device has not sent yet is told of, once. Without this script
// it waits there just the same.
const { queue } = document.getElementById("sign-out-script").dataset;
const form = document.querySelector("form[action='/sign-out']");
const told = document.getElementById("unsent");

form.addEventListener("submit", (event) => {
  if (!told.hidden || form.dataset.leaving) return;
  event.preventDefault();
  event.stopPropagation();
  countWaiting().then((waiting) => {
    if (waiting > 0) told.hidden = false;
    else leave();
  }, leave);
});

async function countWaiting() {
  const { list } = await import(queue);
  return (await list()).filter((item) => item.state !== "discarded").length;
}

function leave() {
  form.dataset.leaving = "yes";
  form.requestSubmit();
}
