// Keeps each answer as it is given; the page works without it, one step at a time.

const form = document.getElementById("step");
const kept = document.getElementById("kept");
const PAUSE_MILLIS = 350;
let timer = 0;

document.getElementById("zone").value = Intl.DateTimeFormat().resolvedOptions().timeZone ?? "";
(document.querySelector("[aria-invalid=true]") ?? document.querySelector(".picks input:checked"))?.focus();
form.addEventListener("input", () => {
  clearTimeout(timer);
  kept.textContent = "";
  timer = setTimeout(keep, PAUSE_MILLIS);
});
window.addEventListener("pagehide", () => timer && navigator.sendBeacon(form.dataset.keep, answers()));

async function keep() {
  timer = 0;
  try {
    const response = await fetch(form.dataset.keep, { method: "POST", body: answers() });
    kept.textContent = response.ok ? kept.dataset.words : "";
  } catch {
    kept.textContent = ""; // the button keeps it too
  }
}

function answers() {
  return new URLSearchParams(new FormData(form));
}
