// The bench's only script: when a value changes it asks the server for the plan again, first a quick
// sketch, then the band, and swaps in what comes back. Everything works without it, one click slower.

const form = document.getElementById("choices");
const PAUSE_MILLIS = 150;
const HALF_TYPED_MILLIS = 450;
let asked = 0;
let running = new AbortController();
let timer = 0;
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
  lastAsked = JSON.stringify(chosen());
  document.addEventListener("input", edited);
  document.addEventListener("change", edited); // some browsers tell of a list's choice only so
  document.addEventListener("click", takeBack);
  document.addEventListener("pointermove", follow);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    plan(0);
  });
  window.addEventListener("popstate", () => location.reload());
  prepareLook();
}

function edited(event) {
  if (event.target.id === "look") {
    look(event.target);
  } else if (event.target.form === form && !halfTyped(event.target)) {
    if (JSON.stringify(chosen()) !== lastAsked) {
      plan(PAUSE_MILLIS);
    }
  }
}

/** A date of which some part is still missing has no value yet. */
function halfTyped(field) {
  return field.type === "datetime-local" && field.value === "";
}

/** A sketch at once; the band, and what is wrong with a value, when the typing pauses. */
function plan(pause) {
  clearTimeout(timer);
  running.abort();
  running = new AbortController();
  const mine = ++asked;
  const fields = chosen();
  lastAsked = JSON.stringify(fields);
  working("Working out the band");
  const sketched = ask(fields, 1, mine);
  timer = setTimeout(async () => {
    await sketched;
    await ask(fields, 0, mine);
    if (mine === asked) {
      working("");
    }
  }, pause);
}

async function ask(fields, draws, mine) {
  try {
    await draw(fields, draws, mine);
  } catch (failure) {
    if (mine === asked) {
      lastAsked = "";
      alarm("The bench does not answer. What you typed is still here; check that Heatwright is running.");
    }
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

/** Asks for one drawing and shows it, unless another was asked for meanwhile. */
async function draw(fields, draws, mine) {
  if (mine !== asked) {
    return;
  }
  const response = await fetch("/plan", {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify({ fields, draws }),
    signal: running.signal,
  }).catch((failure) => {
    if (failure.name === "AbortError") {
      return null;
    }
    throw failure;
  });
  if (!response || mine !== asked) {
    return;
  }
  const answer = response.ok ? await response.json() : { message: await response.text() };
  if (mine !== asked) {
    return;
  }
  if (!response.ok) {
    alarm(answer.message);
    return;
  }
  const sketch = draws === 1;
  const stuck = Object.keys(answer.errors).length > 0;
  if (stuck) {
    if (sketch) {
      return;
    }
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
  if (sketch) {
    const { answer: first, curve } = answer.parts;
    swap({ answer: first, curve });
    return;
  }
  swap(answer.parts);
  takeOver(new URLSearchParams(answer.query), answer.of);
  history.replaceState(null, "", "?" + answer.query);
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
  document.querySelector("label[for=at]").textContent =
    filledIn.get("by") === "start" ? "Heat begins" : "Ready by";
}

function times() {
  return [document.getElementById("at"), document.getElementById("press")];
}

function swap(parts) {
  const open = [...document.querySelectorAll("details[open]")].map((d) => d.id);
  const focused = document.activeElement;
  const { id, selectionStart, selectionEnd } = focused ?? {};
  const place = document.getElementById("look")?.value;
  for (const [name, html] of Object.entries(parts)) {
    const section = document.getElementById(name);
    if (section) {
      section.innerHTML = html;
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
  prepareLook(place);
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
  document.getElementById(event.target.dataset.into).value = await event.target.files[0].text();
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
    plan(0);
  }
}

// Looking along the curve: a slider for keys and fingers, the pointer over the drawing for a mouse.

function points() {
  const data = document.getElementById("points");
  return data ? JSON.parse(data.textContent).looks : [];
}

function prepareLook(place) {
  const slider = document.getElementById("look");
  if (!slider) {
    return;
  }
  slider.closest(".look").hidden = false;
  const last = points().length - 1;
  slider.max = String(last);
  slider.value = place ?? String(Math.round(last / 2));
  look(slider);
}

function look(slider) {
  const point = points()[Number(slider.value)];
  if (!point) {
    return;
  }
  const drawing = document.getElementById("drawing");
  drawing.classList.add("looking");
  const cursor = document.getElementById("cursor");
  cursor.setAttribute("x1", point.at);
  cursor.setAttribute("x2", point.at);
  document.getElementById("seen").textContent = point.says;
  slider.setAttribute("aria-valuetext", point.says);
}

function follow(event) {
  const drawing = event.target.closest?.("#drawing");
  if (!drawing) {
    return;
  }
  const box = drawing.getBoundingClientRect();
  const slider = document.getElementById("look");
  const share = Math.min(1, Math.max(0, (event.clientX - box.left) / box.width));
  slider.value = String(Math.round(share * Number(slider.max)));
  look(slider);
}
