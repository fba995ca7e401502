// The packing table with a queue: what is taken is kept first and sent then, one after another.
// Without this script the same form sends one thing at a time.
const { queue, send: sender, rows, forget } = document.getElementById("pack-script").dataset;
const { keep, drop, exchange, list, makeId } = await import(queue);
const { send } = await import(sender);
const { show, showProgress, showTaken, tell } = await import(rows);

const FIRST_PAUSE_MS = 2000;
const LONGEST_PAUSE_MS = 60000;
const DISCARDED_MS = 24 * 3600 * 1000;
const form = document.getElementById("pack-form");
const words = document.getElementById("pack-queue").dataset;
let pause = FIRST_PAUSE_MS;
let timer;
let sending = "";
let isBusy = false;
let isAsked = false;

function tellWay(way) {
  const line = document.querySelector(`[data-way=${way}]`);
  if (line) line.hidden = false;
}

async function refresh() {
  const items = await list();
  const isOff = !navigator.onLine;
  show(
    items.map((item) => ({
      ...item,
      state: item.id === sending ? "sending" : item.state,
      told: item.state === "waiting" && isOff ? "offline" : item.told,
    })),
    act,
  );
  return items;
}

// One after another; what the line does not take now stays and is tried again.
async function work() {
  if (isBusy) {
    isAsked = true;
    return;
  }
  isBusy = true;
  clearTimeout(timer);
  try {
    let isGoingOn = true;
    while (isGoingOn) {
      isAsked = false;
      const items = await refresh();
      const next = items.find((item) => item.state === "waiting");
      if (!next || !navigator.onLine) break;
      isGoingOn = await sendOne(next);
    }
  } finally {
    isBusy = false;
  }
  if (isAsked) work();
}

async function sendOne(item) {
  sending = item.id;
  await keep({ ...item, tries: (item.tries ?? 0) + 1 });
  await refresh();
  const reply = await send(item, (ratio) => showProgress(item.id, ratio));
  sending = "";
  if (reply.outcome === "taken") {
    await drop(item.id);
    pause = FIRST_PAUSE_MS;
    showTaken(reply.said);
    await reload();
    return true;
  }
  await keep({ ...item, tries: (item.tries ?? 0) + 1, ...explain(reply) });
  await refresh();
  if (reply.outcome === "refused") return true;
  timer = setTimeout(work, pause);
  pause = Math.min(2 * pause, LONGEST_PAUSE_MS);
  return false;
}

function explain({ outcome, status, said }) {
  const told = said?.detail ? `${said.detail} ${said.advice ?? ""}` : "later";
  if (status === 401) {
    // Nobody is signed in here any more: what lies in boxes is forgotten, what waits is not.
    import(forget);
    return { told: "signin" };
  }
  if (outcome === "later") return { told: status === 403 ? told : "later" };
  const isAboutPhoto = Boolean(said?.detail?.startsWith("photo: "));
  return { state: "refused", told, code: said?.code ?? "", isAboutPhoto };
}

// Shows what lies in the container now; that it cannot be loaded harms nothing.
async function reload() {
  const before = document.getElementById("pack-lying");
  if (!before) return;
  try {
    const answer = await fetch(location.href, { headers: { Accept: "text/html" } });
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const after = page.getElementById("pack-lying");
    if (after) before.replaceWith(document.adoptNode(after));
  } catch {
    // The next thing that arrives brings it.
  }
}

// What somebody decides about a thing that waits or was refused.
async function act(name, id, number = "") {
  const item = (await list()).find((one) => one.id === id);
  if (!item || id === sending) return;
  const again = { ...item, id: makeId(), state: "waiting", tries: 0, told: "", code: "" };
  if (name === "discard") await keep({ ...item, state: "discarded", was: item.state, discarded: Date.now() });
  else if (name === "keep") await keep({ ...item, state: item.was });
  else if (name === "move") {
    await exchange(id, { ...again, fields: { ...item.fields, move: "yes" } });
  } else if (name === "without") await exchange(id, { ...again, photo: null });
  else if (name === "renumber" && number) {
    await exchange(id, { ...again, fields: { ...item.fields, object_number: number } });
  }
  pause = FIRST_PAUSE_MS;
  work();
}

// A copy of the bytes: the file of a camera may be gone by the time it is sent.
async function readItem() {
  const sent = new FormData(form);
  const files = [sent.get("photo"), sent.get("gallery")].filter((file) => file?.size);
  const fields = {};
  for (const [name, value] of sent) {
    const isField = typeof value === "string" && !["form_token", "key"].includes(name);
    if (isField && value) fields[name] = value;
  }
  const [file] = files;
  const photo = file ? new Blob([await file.arrayBuffer()], { type: file.type }) : null;
  const photoName = file?.name || "photo.jpg";
  return { id: makeId(), at: Date.now(), state: "waiting", tries: 0, told: "", fields, photo, photoName };
}

async function putIn() {
  const button = document.getElementById("put-in");
  button.disabled = true;
  try {
    const item = await readItem();
    await keep(item);
    clear(item.fields.layer);
    work();
  } catch {
    // No room, or a browser that keeps nothing: the plain form still works.
    tell(words.unkept);
    form.submit();
  } finally {
    button.disabled = false;
  }
}

// The next thing lies in the same layer as a rule, and has another number.
function clear(layer) {
  form.reset();
  form.elements.object_number.value = "";
  form.elements.layer.value = layer;
  form.elements.role.value = "front";
  if (form.elements.move) form.elements.move.checked = false;
  preview();
  form.elements.object_number.focus();
}

function preview() {
  const box = document.getElementById("pack-preview");
  const picture = box.querySelector("img");
  const file = form.elements.photo.files[0] ?? form.elements.gallery.files[0];
  if (picture.src) URL.revokeObjectURL(picture.src);
  picture.removeAttribute("src");
  box.hidden = !file;
  if (file) picture.src = URL.createObjectURL(file);
}

function prepareForm() {
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    // The form stays in use, so nobody may mark it as sent.
    event.stopPropagation();
    putIn();
  });
  for (const name of ["photo", "gallery"]) form.elements[name].addEventListener("change", preview);
  document.getElementById("pack-no-photo").addEventListener("click", () => {
    form.elements.photo.value = "";
    form.elements.gallery.value = "";
    preview();
    form.elements.photo.focus();
  });
}

async function start() {
  try {
    for (const item of await list()) {
      const isOld = item.state === "discarded" && Date.now() - item.discarded > DISCARDED_MS;
      if (isOld) await drop(item.id);
    }
  } catch {
    tellWay("none");
    return;
  }
  if (form) prepareForm();
  window.addEventListener("online", () => {
    pause = FIRST_PAUSE_MS;
    work();
  });
  window.addEventListener("offline", refresh);
  document.addEventListener("visibilitychange", () => document.hidden || work());
  await work();
  await prepareOffline();
}

// A service worker and lasting storage exist on secure connections alone (W3C, Secure Contexts).
async function prepareOffline() {
  if (!window.isSecureContext || !navigator.serviceWorker) {
    tellWay("queue");
    return;
  }
  try {
    await navigator.serviceWorker.register("/pack/sw.js", { scope: "/pack" });
    await navigator.serviceWorker.ready;
    await navigator.storage?.persist?.();
    // The page that brought the worker came before it could keep it.
    const cache = await caches.open("underlid-pack");
    if (navigator.onLine && location.pathname !== "/pack/offline") await cache.add(location.href);
    tellWay("all");
  } catch {
    tellWay("queue");
  }
}

start();
