// Sends one thing with its photo, whole, and says what came of it: "taken", "refused" or "later".
// It carries its own key, so that the service takes it once, however often it is sent.
const STALLED_MS = 45000;
const LATER = new Set([0, 401, 403, 408, 425, 429]);

export async function send(item, onProgress) {
  let reply = await post(item, readToken(document), onProgress);
  // The browser was closed since this page came, or it came from the cache: ask for a new token.
  if (reply.status === 403 && read(reply.text)?.code === "foreign-page") {
    const token = await askToken();
    if (token) reply = await post(item, token, onProgress);
  }
  const said = read(reply.text);
  if (reply.status >= 200 && reply.status < 300 && said) return { outcome: "taken", said };
  const isLater = LATER.has(reply.status) || reply.status >= 500 || !said;
  return { outcome: isLater ? "later" : "refused", status: reply.status, said };
}

function post(item, token, onProgress) {
  const form = new FormData();
  for (const [name, text] of Object.entries(item.fields)) form.append(name, text);
  form.append("form_token", token);
  form.append("key", item.id);
  if (item.photo) form.append("photo", item.photo, item.photoName);
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    let stalled;
    // A line that hangs ends nothing by itself.
    const watch = () => {
      clearTimeout(stalled);
      stalled = setTimeout(() => request.abort(), STALLED_MS);
    };
    request.open("POST", "/pack/item");
    request.setRequestHeader("Accept", "application/json");
    request.upload.onprogress = (event) => {
      watch();
      if (event.lengthComputable) onProgress(event.loaded / event.total);
    };
    request.onloadend = () => {
      clearTimeout(stalled);
      resolve({ status: request.status, text: request.responseText });
    };
    watch();
    request.send(form);
  });
}

async function askToken() {
  try {
    const answer = await fetch(location.href, { headers: { Accept: "text/html" }, cache: "no-store" });
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    return readToken(page);
  } catch {
    return "";
  }
}

function readToken(page) {
  const field = page.querySelector("[name=form_token]");
  return field ? field.value : "";
}

function read(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
