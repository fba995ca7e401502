// Counts down how long a code is good. Without it the page still says until when.

const shown = document.getElementById("countdown");

function tell(seconds) {
  const left = `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
  shown.querySelector("[data-left]").textContent = left;
}

function begin() {
  // Measured from now on: the clocks of two machines may differ.
  const ends = performance.now() + Number(shown.dataset.seconds) * 1000;
  const timer = setInterval(() => {
    const seconds = Math.max(0, Math.ceil((ends - performance.now()) / 1000));
    tell(seconds);
    if (seconds > 0) return;
    clearInterval(timer);
    shown.querySelector("[role=timer]").hidden = true;
    shown.querySelector("[data-over]").hidden = false;
  }, 1000);
}

if (shown) begin();
