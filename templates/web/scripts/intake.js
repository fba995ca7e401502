// Files can be dropped, a folder can be chosen, and how much has been sent is told. Without it the
// plain form does the same.

const form = document.getElementById("send");
const files = document.getElementById("field-files");
const drop = document.getElementById("drop");

if (form && files && drop) {
  document.getElementById("drop-here").hidden = false;
  const folder = document.getElementById("folder");
  if ("webkitdirectory" in files) folder.hidden = false;
  takeDropped();
  form.addEventListener("submit", sendWithProgress);
}

function takeDropped() {
  const mark = (event, over) => {
    event.preventDefault();
    drop.classList.toggle("over", over);
  };
  // A file that misses the field would else open in place of the page.
  for (const name of ["dragover", "drop"]) {
    window.addEventListener(name, (event) => event.preventDefault());
  }
  drop.addEventListener("dragover", (event) => mark(event, true));
  drop.addEventListener("dragleave", (event) => mark(event, false));
  drop.addEventListener("drop", (event) => {
    mark(event, false);
    if (event.dataTransfer.files.length) files.files = event.dataTransfer.files;
  });
}

function sendWithProgress(event) {
  event.preventDefault();
  const request = new XMLHttpRequest();
  const told = document.getElementById("sent");
  document.getElementById("sending").hidden = false;
  request.upload.addEventListener("progress", (at) => {
    if (at.lengthComputable) told.value = (100 * at.loaded) / at.total;
  });
  // The page that comes back is shown as if the form had been sent plainly.
  request.addEventListener("load", () => show(request));
  request.addEventListener("error", () => form.submit());
  request.open("POST", form.action);
  request.setRequestHeader("Accept", "text/html");
  request.send(new FormData(form));
}

function show(request) {
  const page = new DOMParser().parseFromString(request.responseText, "text/html");
  const main = page.getElementById("main");
  if (!main) {
    location.assign(request.responseURL);
    return;
  }
  if (request.responseURL !== location.href) {
    history.pushState(null, "", request.responseURL);
    window.addEventListener("popstate", () => location.reload());
  }
  document.title = page.title;
  document.getElementById("main").replaceWith(main);
  (document.getElementById("faults") ?? main).focus();
  window.scrollTo(0, 0);
}
