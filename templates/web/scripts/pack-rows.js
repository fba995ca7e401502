// Shows the queue: one row for each thing that waits, with what can be done about it.
const queue = document.getElementById("pack-queue");
const rows = document.getElementById("pack-rows");
const told = document.getElementById("pack-told");
const dones = document.getElementById("pack-dones");
const here = document.getElementById("pack").dataset.container;
const SHAPES = { waiting: "open", sending: "open", refused: "wrong", discarded: "open" };
const MOST_DONES = 3;
const shown = new Map();
const words = queue.dataset;

// Puts the rows in order and keeps those that are there, so that no field loses the keyboard.
export function show(items, act) {
  for (const [id, row] of shown) {
    if (!items.some((item) => item.id === id)) remove(id, row);
  }
  for (const item of items) {
    const row = shown.get(item.id) ?? make(item, act);
    fill(row, item);
  }
  queue.hidden = items.length === 0;
}

export function showProgress(id, ratio) {
  const bar = shown.get(id)?.querySelector("progress");
  if (bar) bar.value = ratio;
}

// Tells what arrived, with a way back.
export function showTaken(said) {
  const isPhoto = said.before === said.revision;
  const sentence = (isPhoto ? words.again : words.in).replace("{number}", () => said.object_number);
  tell(sentence);
  const form = document.getElementById("pack-done").content.cloneNode(true).firstElementChild;
  form.querySelector("p").textContent = sentence;
  const fields = {
    container: said.container_number,
    object_number: said.object_number,
    layer: said.layer,
    before: said.before,
    after: said.revision,
    photo: said.photo_sha256,
    moved_from: said.moved_from,
    moved_before: said.moved_before,
  };
  for (const [name, value] of Object.entries(fields)) {
    const field = document.createElement("input");
    Object.assign(field, { type: "hidden", name, value: String(value) });
    form.append(field);
  }
  dones.prepend(form);
  while (dones.children.length > MOST_DONES) dones.lastElementChild.remove();
}

export function tell(sentence) {
  told.textContent = sentence;
}

function make(item, act) {
  const row = document.getElementById("pack-row").content.cloneNode(true).firstElementChild;
  const picture = row.querySelector("img");
  if (item.photo) picture.src = URL.createObjectURL(item.photo);
  else picture.hidden = true;
  const form = row.querySelector("form");
  row.addEventListener("click", (event) => {
    const name = event.target.dataset.do;
    if (name === "change") {
      form.hidden = false;
      form.elements.number.focus();
    } else if (name) act(name, item.id);
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    event.stopPropagation();
    act("renumber", item.id, form.elements.number.value.trim());
  });
  shown.set(item.id, row);
  rows.append(row);
  return row;
}

function fill(row, item) {
  const { fields, state } = item;
  row.querySelector(".number").textContent = fields.object_number;
  const number = row.querySelector("form").elements.number;
  if (row.querySelector("form").hidden) number.value = fields.object_number;
  const box = fields.container === here ? "" : `${fields.container}, `;
  row.querySelector(".where").textContent = `${box}${words.layer.replace("{layer}", () => fields.layer)}`;
  const mark = row.querySelector(".state");
  mark.className = `state ${SHAPES[state]}`;
  mark.textContent = words[state];
  row.querySelector(".words").textContent = item.told ? (words[item.told] ?? item.told) : "";
  row.querySelector("progress").hidden = state !== "sending";
  const can = {
    change: state === "refused" || (state === "waiting" && !item.tries),
    move: state === "refused" && item.code === "packed-elsewhere",
    without: state === "refused" && Boolean(item.photo) && item.isAboutPhoto,
    discard: state === "refused" || (state === "waiting" && !item.tries),
    keep: state === "discarded",
  };
  for (const button of row.querySelectorAll("[data-do]")) {
    button.hidden = !can[button.dataset.do];
  }
}

function remove(id, row) {
  const picture = row.querySelector("img");
  if (picture.src) URL.revokeObjectURL(picture.src);
  row.remove();
  shown.delete(id);
}
