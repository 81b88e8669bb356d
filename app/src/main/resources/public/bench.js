// When a value changes, the bench asks the server for the plan again: first a quick sketch, then the
// display's band, then everything, and swaps in what comes back. Everything works without it, one
// click slower.

import { refill, show } from "./curves.js";
import { say } from "./say.js";

const form = document.getElementById("choices");
const HALF_TYPED_MILLIS = 450;
const PAGE = Math.random().toString(36).slice(2);
let asked = 0;
let running = new AbortController();
let latest = {};
let sketching = false;
let lastAsked = "";

document.documentElement.classList.add("scripted");
document.getElementById("verdict")?.focus();
document.querySelectorAll("input[data-into]").forEach((field) => {
  field.addEventListener("change", readFile);
  field.closest(".from-file").hidden = false;
});
document.querySelector("form.learn")?.addEventListener("submit", tellWork);
if (form) {
  if (!location.search) {
    times().forEach((field) => (field.dataset.composed = field.value));
  }
  remember(location.search.slice(1));
  lastAsked = JSON.stringify(chosen());
  document.addEventListener("input", edited);
  document.addEventListener("change", edited); // some browsers tell of a list's choice only so
  document.addEventListener("click", takeBack);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    plan();
  });
  window.addEventListener("popstate", () => location.reload());
}

function edited(event) {
  if (event.target.form === form && !halfTyped(event.target)) {
    if (JSON.stringify(chosen()) !== lastAsked) {
      plan();
    }
  }
}

/** A date of which some part is still missing has no value yet. */
function halfTyped(field) {
  return field.type === "datetime-local" && field.value === "";
}

/** A sketch at once, then the band, and what is wrong with a value. What is typed over ends early. */
function plan() {
  running.abort();
  running = new AbortController();
  asked++;
  latest = chosen();
  lastAsked = JSON.stringify(latest);
  performance.clearMarks("plan:edit");
  performance.mark("plan:edit");
  working(say("Working out the band"));
  sketch();
}

/** One sketch at a time; whatever changed meanwhile is sketched next; the last one is settled. */
async function sketch() {
  if (sketching) {
    return;
  }
  sketching = true;
  try {
    for (let drawn = 0; drawn !== asked; ) {
      drawn = asked;
      const answer = await post("/plan/curve", { fields: latest, draws: 1, page: PAGE, number: drawn });
      if (answer?.curve) {
        showCurve(answer.curve);
        swap({ answer: answer.answer });
        measure("plan:sketch");
      } else if (answer?.failed) {
        alarm(answer.failed);
      }
    }
  } catch (failure) {
    unanswered();
  }
  sketching = false;
  settle(latest, asked);
}

/** The band of the display, then everything. */
async function settle(fields, mine) {
  try {
    const { signal } = running;
    const band = await post("/plan/curve", { fields, draws: 0, page: PAGE, number: mine }, signal);
    if (mine === asked && band?.curve) {
      showCurve(band.curve);
      measure("plan:band");
    }
    if (mine === asked) {
      await draw(fields, mine, signal);
    }
  } catch (failure) {
    if (mine === asked) {
      unanswered();
    }
  }
  if (mine === asked) {
    working("");
  }
}

function unanswered() {
  lastAsked = "";
  alarm(say("The bench does not answer. What you typed is still here; check that Heatwright is running."));
}

/** How long after the edit something is on the screen, ms: for whoever measures. */
function measure(what) {
  const [edit] = performance.getEntriesByName("plan:edit");
  if (edit) {
    const start = edit.startTime;
    requestAnimationFrame(() => performance.measure(what, { start, end: performance.now() }));
  }
}

/** The answer; nothing where it is not wanted any more; or an Error with what is wrong. */
async function post(address, body, signal) {
  let response;
  try {
    response = await fetch(address, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(body),
      signal,
    });
  } catch (failure) {
    return unlessStopped(failure, () => {
      throw failure;
    });
  }
  // Here the bench has answered, whatever it says: it is not to be told that it does not.
  try {
    return response.ok ? await response.json() : { failed: (await response.text()) || notWorkedOut() };
  } catch (failure) {
    return unlessStopped(failure, () => ({ failed: notWorkedOut() }));
  }
}

function unlessStopped(failure, otherwise) {
  return failure.name === "AbortError" ? null : otherwise();
}

function notWorkedOut() {
  return say("The bench could not work that out; the terminal it runs in says more.");
}

function showCurve(data) {
  const figure = document.getElementById("firing");
  if (figure) {
    show(figure, data);
  }
}

/** The fields that say something: a value nobody touched is the rules' own, or the usual time. */
function chosen() {
  const fields = Object.fromEntries(new FormData(form));
  for (const field of form.elements) {
    if (field.dataset.composed !== undefined && field.dataset.composed === field.value) {
      delete fields[field.name];
    }
  }
  return fields;
}

/** Asks for the whole plan and shows it, unless another was asked for meanwhile. */
async function draw(fields, mine, signal) {
  const answer = await post("/plan", { fields, draws: 0, page: PAGE, number: mine }, signal);
  if (!answer || mine !== asked) {
    return;
  }
  if (answer.failed) {
    alarm(answer.failed);
    return;
  }
  const stuck = Object.keys(answer.errors).length > 0;
  if (stuck) {
    await new Promise((later) => setTimeout(later, HALF_TYPED_MILLIS));
    if (mine !== asked) {
      return;
    }
  }
  alarm("");
  tellErrors(answer.errors);
  note(answer.notes);
  document.body.classList.toggle("stale", stuck);
  if (stuck) {
    return;
  }
  swap(answer.parts);
  measure("plan:whole");
  takeOver(new URLSearchParams(answer.query), answer.of);
  history.replaceState(null, "", "?" + answer.query);
  remember(answer.query);
}

/** The plan that was edited last: the word Plan leads back to it, until it is begun afresh. */
function remember(query) {
  try {
    if (query) {
      localStorage.setItem("heatwright plan", query);
    }
  } catch {
    // No memory is allowed here: the address has it.
  }
}

/** What the bench filled in: the usual times, and the composition that edits belong to. */
function takeOver(filledIn, of) {
  document.getElementById("of").value = of;
  for (const field of times()) {
    if (field.dataset.composed === field.value) {
      field.value = field.dataset.composed = filledIn.get(field.name);
    }
  }
  lastAsked = JSON.stringify(chosen());
  for (const bring of document.querySelectorAll("#shelf form")) {
    bring.action = new URL(bring.action).pathname + "?" + filledIn; // what is brought comes to this plan
  }
  document.querySelector("label[for=at]").textContent =
    filledIn.get("by") === "start" ? say("Heat begins") : say("Ready by");
}

function times() {
  return [document.getElementById("at"), document.getElementById("press")];
}

function swap(parts) {
  const open = [...document.querySelectorAll("details[open]")].map((d) => d.id);
  const focused = document.activeElement;
  const { id, selectionStart, selectionEnd } = focused ?? {};
  for (const [name, html] of Object.entries(parts)) {
    const section = document.getElementById(name);
    if (section) {
      refill(section, html);
    }
  }
  const told = document.querySelectorAll("#answer .lead, #answer .figure");
  document.title = [...told].map((words) => words.textContent).join(" ") + " · Heatwright";
  open.forEach((d) => document.getElementById(d)?.setAttribute("open", ""));
  const again = id ? document.getElementById(id) : null;
  if (again && again !== document.activeElement) {
    again.focus({ preventScroll: true });
    if (again.type === "text" && selectionStart !== null) {
      again.setSelectionRange(selectionStart, selectionEnd);
    }
  }
}

function tellErrors(errors) {
  for (const line of document.querySelectorAll("p.error")) {
    const name = line.id.replace(/-error$/, "");
    line.textContent = errors[name] ?? "";
    const field = document.getElementById(name);
    if (field) {
      errors[name] ? field.setAttribute("aria-invalid", "true") : field.removeAttribute("aria-invalid");
    }
  }
}

function working(words) {
  const progress = document.getElementById("progress");
  progress.textContent = words;
  progress.classList.toggle("working", words !== "");
}

function note(sentences) {
  const lines = sentences.map((sentence) => {
    const line = document.createElement("p");
    line.className = "aside";
    line.textContent = sentence;
    return line;
  });
  document.getElementById("notes").replaceChildren(...lines);
}

/** What goes wrong is told in sight, wherever on the page somebody types. */
function alarm(sentence) {
  document.getElementById("alarm").textContent = sentence;
  document.body.classList.toggle("stale", sentence !== "");
}

async function readFile(event) {
  document.getElementById(event.target.dataset.into).value = await decoded(event.target.files[0]);
}

/** A file's text, also where an older program wrote it: by its mark, else UTF-8, else Latin letters. */
async function decoded(file) {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const sixteen = { "255,254": "utf-16le", "254,255": "utf-16be" }[bytes.slice(0, 2).join()];
  try {
    return new TextDecoder(sixteen ?? "utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** Learning takes a while: says so, and takes no second press. */
function tellWork(event) {
  const told = event.target.querySelector("[data-working]");
  told.textContent = told.dataset.working;
  event.target.querySelector("button").disabled = true;
}

function takeBack(event) {
  const name = event.target.dataset?.back;
  if (name) {
    const field = document.getElementById(name);
    field.value = field.dataset.composed;
    field.focus();
    plan();
  }
}
