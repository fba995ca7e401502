// Follows a task as it goes. Without this the page loads itself again every few seconds.

const section = document.getElementById("progress");

function tell(task) {
  const bar = section.querySelector("progress");
  if (task.of) {
    bar.max = task.of;
    bar.value = task.done;
  }
  section.querySelector("[data-done]").textContent = String(task.done);
  section.querySelector("[data-of]").textContent = task.of ? String(task.of) : "…";
}

if (section) {
  const events = new EventSource(section.dataset.events);
  events.addEventListener("progress", (event) => tell(JSON.parse(event.data)));
  events.addEventListener("end", () => {
    events.close();
    location.reload();
  });
}
