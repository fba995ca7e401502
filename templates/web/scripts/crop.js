// Crops with handles on the picture: one at each edge, dragged or moved by the arrow keys. The four
// fields stay what is sent, so that everything works without this, too.
const frame = document.getElementById("crop-frame");
const form = document.getElementById("crop-form");
const EDGES = ["left", "top", "right", "bottom"];
const OTHER = { left: "right", right: "left", top: "bottom", bottom: "top" };
const STEP = 1;
const LEAST_LEFT = 5;
const handles = {};
const shades = {};

function read(edge) {
  const number = Number.parseFloat(form.elements[edge].value.replace(",", "."));
  return Number.isFinite(number) ? number : 0;
}

// What two opposite edges cut away leaves something between them.
function write(edge, cut) {
  const most = 100 - LEAST_LEFT - read(OTHER[edge]);
  form.elements[edge].value = String(Math.round(Math.min(Math.max(cut, 0), most) * 10) / 10);
  draw();
}

function draw() {
  const [left, top, right, bottom] = EDGES.map(read);
  const across = `${left + (100 - left - right) / 2}%`;
  const down = `${top + (100 - top - bottom) / 2}%`;
  const places = {
    left: [`${left}%`, down],
    right: [`${100 - right}%`, down],
    top: [across, `${top}%`],
    bottom: [across, `${100 - bottom}%`],
  };
  for (const edge of EDGES) {
    [handles[edge].style.left, handles[edge].style.top] = places[edge];
    handles[edge].setAttribute("aria-valuenow", String(read(edge)));
  }
  place(shades.left, 0, 0, `${100 - left}%`, 0);
  place(shades.right, `${100 - right}%`, 0, 0, 0);
  place(shades.top, `${left}%`, 0, `${right}%`, `${100 - top}%`);
  place(shades.bottom, `${left}%`, `${100 - bottom}%`, `${right}%`, 0);
}

function place(shade, left, top, right, bottom) {
  Object.assign(shade.style, { left, top, right, bottom });
}

function drag(edge, event) {
  const box = frame.getBoundingClientRect();
  const across = (100 * (event.clientX - box.left)) / box.width;
  const down = (100 * (event.clientY - box.top)) / box.height;
  const cuts = { left: across, right: 100 - across, top: down, bottom: 100 - down };
  write(edge, cuts[edge]);
}

function push(edge, event) {
  const inwards = { left: "ArrowRight", right: "ArrowLeft", top: "ArrowDown", bottom: "ArrowUp" };
  const outwards = { left: "ArrowLeft", right: "ArrowRight", top: "ArrowUp", bottom: "ArrowDown" };
  const way = Number(event.key === inwards[edge]) - Number(event.key === outwards[edge]);
  if (!way) return;
  event.preventDefault();
  write(edge, read(edge) + way * STEP);
}

function make(edge) {
  const label = form.querySelector(`label[for=field-${edge}]`).textContent;
  const handle = document.createElement("button");
  handle.type = "button";
  handle.className = "crop-edge";
  handle.setAttribute("role", "slider");
  handle.setAttribute("aria-label", `${label}: ${frame.dataset.words}`);
  handle.setAttribute("aria-valuemin", "0");
  handle.setAttribute("aria-valuemax", "99");
  handle.addEventListener("pointerdown", (event) => handle.setPointerCapture(event.pointerId));
  handle.addEventListener("pointermove", (event) => {
    if (handle.hasPointerCapture(event.pointerId)) drag(edge, event);
  });
  handle.addEventListener("keydown", (event) => push(edge, event));
  form.elements[edge].addEventListener("input", draw);
  return handle;
}

for (const edge of EDGES) {
  shades[edge] = document.createElement("div");
  shades[edge].className = "crop-shade";
  frame.append(shades[edge]);
}
for (const edge of EDGES) {
  handles[edge] = make(edge);
  frame.append(handles[edge]);
}
draw();
