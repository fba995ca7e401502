// The picture of a sheet: arrow keys walk over it, and where printing begins is told as one ticks.
// Without this its boxes are ticked one by one with the tab key, and the server finds the beginning.

const columnsOf = (sheet) => getComputedStyle(sheet).gridTemplateColumns.split(" ").length;

function tellStart(section) {
  const free = [...section.querySelectorAll(".position input")].findIndex((box) => !box.checked);
  section.querySelector("output").textContent = String(free < 0 ? 1 : free + 1);
}

function walk(event) {
  const sheet = event.currentTarget;
  const boxes = [...sheet.querySelectorAll("input")];
  const steps = { ArrowLeft: -1, ArrowRight: 1, ArrowUp: -columnsOf(sheet), ArrowDown: columnsOf(sheet) };
  const next = boxes[boxes.indexOf(event.target) + (steps[event.key] ?? NaN)];
  if (next) {
    event.preventDefault();
    next.focus();
  }
}

for (const sheet of document.querySelectorAll(".drawn")) {
  const section = sheet.closest("section");
  sheet.addEventListener("keydown", walk);
  sheet.addEventListener("change", () => tellStart(section));
  section.querySelector("button[name=fresh]")?.addEventListener("click", (event) => {
    event.preventDefault();
    for (const box of sheet.querySelectorAll("input")) box.checked = false;
    tellStart(section);
  });
}
