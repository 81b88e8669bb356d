// What a phone needs of every page: the worker that keeps pages for when the network drops, and a screen
// that stays awake while somebody reads it with hands that are not free. Everything works without it.

import { answers, onceItAnswers } from "/again.js";

const LOOK_MILLIS = 5000;
const TYPED = "heatwright typed";
const SENT = "heatwright sent";
const asOf = document.querySelector(".as-of");
let told = "";
let lock = null;
let sheetInSight = false;

if ("serviceWorker" in navigator) {
  navigator.serviceWorker
    .register("/worker.js")
    .then(() => navigator.serviceWorker.ready)
    .then((registration) => {
      tellWhatToKeep(registration);
      setInterval(() => tellWhatToKeep(registration), LOOK_MILLIS);
    })
    .catch(() => {}); // no worker here: then nothing is kept
}

/** This page under the address it has now, and what it leads to at the kiln. */
function tellWhatToKeep(registration) {
  if (asOf) {
    return;
  }
  const ahead = [...document.querySelectorAll("a[data-keep]")].map((link) => link.href.split("#")[0]);
  const keep = [location.href.split("#")[0], ...ahead];
  if (told !== keep.join("\n")) {
    told = keep.join("\n");
    registration.active?.postMessage({ keep });
  }
}

// ---- the plan that was edited last

{
  let last = "";
  try {
    last = localStorage.getItem("heatwright plan") ?? "";
  } catch {
    // No memory is allowed here.
  }
  const fields = new URLSearchParams(last);
  const press = fields.get("press");
  if (press && Date.parse(press) < Date.now() - 3_600_000) {
    fields.delete("press"); // that hour has passed
    fields.delete("at");
  }
  const afresh = document.querySelector(".afresh");
  if (fields.size) {
    document.querySelectorAll("a[href='/plan']:not(.afresh)").forEach((link) => (link.href = "/plan?" + fields));
  }
  if (afresh) {
    afresh.hidden = false;
    afresh.addEventListener("click", () => localStorage.removeItem("heatwright plan"));
  }
}

// ---- what was kept

if (asOf) {
  onceItAnswers(() => {
    if (document.querySelector("main.now") && !document.querySelector("main.now input:focus")) {
      location.reload();
      return;
    }
    const sent = document.querySelector("main.offline") !== null;
    const link = document.createElement("a");
    link.href = location.href;
    link.textContent = sent ? document.body.dataset.sendAgain : document.body.dataset.again;
    link.addEventListener("click", (event) => {
      event.preventDefault();
      sent ? history.back() : location.reload();
    });
    asOf.replaceChildren(link);
  });
}

// ---- what was typed and could not be sent

/** Said of the page that stands in for an answer that never came. */
const notSent = asOf && document.querySelector("main.offline");
const before = recall(SENT);
if (before.page && !notSent) {
  if (before.lost && before.page === location.href.split("#")[0]) {
    fillIn(before);
  }
  store(SENT, {});
} else if (notSent) {
  store(SENT, { ...before, lost: true });
}
document.addEventListener("submit", ({ target, defaultPrevented }) => {
  if (!defaultPrevented && target.method === "post" && !target.dataset.beside) {
    const typed = [...target.elements]
      .filter((field) => field.name && /^(text|number|time|date|textarea)$/.test(field.type))
      .map((field) => [field.name, field.value]);
    store(SENT, { page: location.href.split("#")[0], form: target.getAttribute("action"), typed });
  }
});

function fillIn({ form, typed }) {
  const here = [...document.forms].find((other) => other.getAttribute("action") === form);
  for (const [name, words] of typed) {
    const field = here?.elements.namedItem(name);
    if (field?.value === field?.defaultValue && words) {
      field.value = words;
      field.closest("details")?.setAttribute("open", "");
    }
  }
}

// ---- the blind read-back on the bench's own page

const reading = document.querySelector("form[data-beside]");
if (reading) {
  const [way] = performance.getEntriesByType("navigation");
  const before = recall(TYPED);
  if (before.of === reading.dataset.plan && (asOf || way?.type === "reload" || way?.type === "back_forward")) {
    for (const [name, words] of Object.entries(before)) {
      const field = reading.elements[name];
      if (field) {
        field.type === "checkbox" ? (field.checked = true) : (field.value = words);
      }
    }
  }
  reading.addEventListener("input", remember);
  reading.addEventListener("submit", async (event) => {
    event.preventDefault();
    if (await answers()) {
      store(TYPED, {});
      reading.submit();
    } else {
      remember(); // it is compared here, by the same core
      location.href = reading.dataset.beside;
    }
  });
}

function remember() {
  store(TYPED, { of: reading.dataset.plan, ...Object.fromEntries(new FormData(reading)) });
}

function recall(name) {
  try {
    return JSON.parse(sessionStorage.getItem(name)) ?? {};
  } catch {
    return {};
  }
}

function store(name, values) {
  try {
    sessionStorage.setItem(name, JSON.stringify(values));
  } catch {
    // No memory is allowed here.
  }
}

// ---- the screen

const sheet = document.querySelector("#keying");
if (sheet && "IntersectionObserver" in window) {
  new IntersectionObserver(([seen]) => {
    sheetInSight = seen.isIntersecting;
    sheetInSight ? stayAwake() : mayDim();
  }).observe(sheet);
}
document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && stayAwake());
document.addEventListener("click", stayAwake); // some browsers grant it only after a touch
stayAwake();

async function stayAwake() {
  const needed = sheetInSight || document.querySelector("main.timer, main.blind, main.now .hot, #keyin");
  if (needed && navigator.wakeLock && (!lock || lock.released)) {
    lock = await navigator.wakeLock.request("screen").catch(() => null);
  }
}

function mayDim() {
  if (!document.querySelector("main.timer, main.blind, main.now .hot, #keyin")) {
    lock?.release();
    lock = null;
  }
}
