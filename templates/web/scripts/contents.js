// Makes the page of a container quicker to work with. Every form on it works without.

// A page that tells of faults or of a conflict is shown like any other.
document.addEventListener("htmx:beforeSwap", (event) => {
  const status = event.detail.xhr.status;
  if (status === 409 || status === 422) event.detail.shouldSwap = true;
});

// What was not taken in is read out, and the keyboard stands there; where what it stood on is gone,
// it stands at the head of the contents.
document.addEventListener("htmx:afterSettle", () => {
  const lost = document.activeElement === document.body ? document.getElementById("contents-title") : null;
  (document.getElementById("faults") ?? lost)?.focus({ preventScroll: lost !== null });
  prepare();
});

// Suggestions are asked for by what stands in the field, whatever the field is called.
document.addEventListener("htmx:configRequest", (event) => {
  const { elt } = event.detail;
  if (elt.matches("input[list]")) event.detail.parameters = { q: elt.value, of: elt.dataset.of };
});

// Objects are dragged by their handles, with a mouse, a pen or a finger.
function prepare() {
  for (const handle of document.querySelectorAll(".arrange .handle[hidden]")) {
    handle.hidden = false;
    handle.addEventListener("pointerdown", begin);
  }
}

function begin(event) {
  const item = event.currentTarget.closest("li");
  const before = writeOrder();
  event.preventDefault();
  item.classList.add("dragged");

  // The whole page listens, for a handle that changes its place loses hold of the pointer.
  const move = (at) => putAt(item, at.clientX, at.clientY);
  const end = () => {
    item.classList.remove("dragged");
    document.removeEventListener("pointermove", move);
    document.removeEventListener("pointerup", end);
    document.removeEventListener("pointercancel", end);
    const order = writeOrder();
    if (order !== before) send(order);
  };
  document.addEventListener("pointermove", move);
  document.addEventListener("pointerup", end);
  document.addEventListener("pointercancel", end);
}

// The object goes before or behind the one that the pointer is over, or into an empty layer.
function putAt(item, x, y) {
  const under = document.elementFromPoint(x, y);
  const list = under?.closest(".arrange");
  const other = under?.closest(".arrange > li");
  if (!list || other === item) return;
  if (!other) {
    list.append(item);
    return;
  }
  const box = other.getBoundingClientRect();
  other[y < box.top + box.height / 2 ? "before" : "after"](item);
}

function writeOrder() {
  const items = document.querySelectorAll(".arrange > li");
  return Array.from(items, (item) => `${item.parentElement.dataset.layer}:${item.dataset.key}`).join(" ");
}

function send(order) {
  const form = document.getElementById("order");
  form.elements.order.value = order;
  form.requestSubmit();
}

prepare();
