// What was taken at the packing table and is not sent yet, kept in this browser (IndexedDB), where
// it outlives a reload, a closed browser and an empty battery.
const STORE = "items";
let opening;

function open() {
  opening ??= new Promise((resolve, reject) => {
    const asked = indexedDB.open("underlid-pack", 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore(STORE, { keyPath: "id" });
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
  });
  return opening;
}

// "strict" waits until it is on the disk, not only in the memory of the device.
async function change(work) {
  const base = await open();
  await new Promise((resolve, reject) => {
    const turn = base.transaction(STORE, "readwrite", { durability: "strict" });
    turn.oncomplete = resolve;
    turn.onabort = () => reject(turn.error);
    work(turn.objectStore(STORE));
  });
}

export const keep = (item) => change((store) => store.put(item));

export const drop = (id) => change((store) => store.delete(id));

export const exchange = (id, item) =>
  change((store) => {
    store.delete(id);
    store.put(item);
  });

export async function list() {
  const base = await open();
  const items = await new Promise((resolve, reject) => {
    const asked = base.transaction(STORE).objectStore(STORE).getAll();
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
  });
  return items.sort((one, other) => one.at - other.at || (one.id < other.id ? -1 : 1));
}

// Such a name is given without a secure connection, too; crypto.randomUUID is not.
export function makeId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
