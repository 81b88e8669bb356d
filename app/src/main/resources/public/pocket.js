// One page for card, keying, rehearsal and read-back. What the keypad does and what a comparison
// says is decided by the compiled core alone (pocket-core.js); this script only shows and asks.
import { openPocket } from "./pocket-core.js";

const $ = (selector) => document.querySelector(selector);
const text = $("#pocket-data").textContent;
const pocket = openPocket(text);
const facts = JSON.parse($("#pocket-facts").textContent);

/** The page's language: whole texts and phrases with holes, where the bench put them in. */
const book = JSON.parse($("#pocket-words")?.textContent ?? "null");
const HOLE = /\{(\d+)([#@!]?)\}/g;

function phrases() {
  book.compiled ??= book.phrases
    .map(([english, other]) => {
      const holes = [...english.matchAll(HOLE)].map(([, number, kind]) => ({ number, kind }));
      const literal = english.split(/\{\d+[#@!]?\}/).map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
      return { holes, other, fixed: literal.join("").length, pattern: new RegExp("^" + literal.join("(.*?)") + "$", "s") };
    })
    .sort((a, b) => b.fixed - a.fixed);
  return book.compiled;
}

/** A text in the page's language: whole, with its holes filled, or sentence by sentence. */
function tongue(text, deep = 0) {
  if (!book || typeof text !== "string" || !/[a-z]{2}/i.test(text) || deep > 4) return text;
  const lower = text[0].toLowerCase() + text.slice(1);
  const whole = book.words[text] ?? (book.words[lower] && capital(book.words[lower]));
  if (whole !== undefined) return whole;
  for (const phrase of phrases()) {
    const found = phrase.pattern.exec(text);
    if (found) {
      return phrase.other.replace(HOLE, (hole, number) => {
        const i = phrase.holes.findIndex((one) => one.number === number);
        const held = found[i + 1] ?? hole;
        return phrase.holes[i]?.kind === "!" ? held : tongue(held, deep + 1);
      });
    }
  }
  const sentences = text.split(/(?<=[.!?]) (?=\p{Lu})/u);
  return sentences.length > 1 ? sentences.map((one) => tongue(one, deep + 1)).join(" ") : text;
}

const capital = (text) => text[0].toUpperCase() + text.slice(1);

/** An element with attributes and what is in it. */
function make(tag, attributes, ...inside) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes || {})) {
    if (value !== false && value !== undefined) made.setAttribute(name, value === true ? "" : name === "aria-label" ? tongue(value) : value);
  }
  made.append(...inside.map((one) => tongue(one)));
  return made;
}

/** Where one was; some viewers allow no memory, and then the page starts at its beginning. */
const memory = {
  name: "heatwright " + facts.id,
  read() {
    try {
      return JSON.parse(localStorage.getItem(this.name)) || {};
    } catch {
      return {};
    }
  },
  write(change) {
    try {
      localStorage.setItem(this.name, JSON.stringify({ ...this.read(), ...change }));
    } catch {
      // Nothing depends on it.
    }
  },
};

// ---- screens

const screens = [...document.querySelectorAll(".screen")];
let current = "";

function show(id, move) {
  const screen = screens.find((s) => s.id === id) || screens[0];
  if (current === "readback" && screen.id !== current) readback.left();
  current = screen.id;
  for (const other of screens) other.hidden = other !== screen;
  for (const link of document.querySelectorAll(".tabs a")) {
    if (link.hash === "#" + screen.id) link.setAttribute("aria-current", "page");
    else link.removeAttribute("aria-current");
  }
  if (move) {
    window.scrollTo(0, 0);
    screen.querySelector("h2").focus({ preventScroll: true });
  }
  memory.write({ screen: screen.id });
}

function go(id) {
  if (location.hash === "#" + id) show(id, true);
  else location.hash = id;
}

// ---- key it in

const keying = (() => {
  const list = $("#keyin .keys");
  if (!list) return null;
  const steps = [...list.children];
  let at = Math.min(Math.max(0, memory.read().step | 0), steps.length);
  const said = make("p", { class: "out", role: "status" });
  const count = make("p", { class: "prompt", id: "step-count" });
  const bar = make("progress", { max: String(steps.length), "aria-labelledby": "step-count" });
  const end = make(
    "li",
    { hidden: true },
    make("p", { class: "press" }, "All steps are done."),
    make("p", { class: "shows" }, "Now read it back: only that shows that the slot holds the plan."),
  );
  list.append(end);
  const back = make("button", { type: "button", class: "second" }, "Back");
  const next = make("button", { type: "button", class: "main" }, "Done, next");
  const again = make("button", { type: "button", class: "second" }, "From the beginning");
  const read = make("button", { type: "button", class: "main" }, "Read it back, blind");
  list.before(bar, count, said);
  list.after(make("p", { class: "go" }, back, next, read, again));

  function draw(speak) {
    const over = at === steps.length;
    steps.forEach((step, i) => (step.hidden = i !== at));
    end.hidden = !over;
    count.textContent = tongue(over ? steps.length + " of " + steps.length : "Step " + (at + 1) + " of " + steps.length);
    bar.value = at;
    back.disabled = at === 0;
    next.hidden = over;
    read.hidden = again.hidden = !over;
    if (speak) said.textContent = (over ? "" : count.textContent + ". ") + (over ? end : steps[at]).innerText;
    memory.write({ step: at });
  }
  const to = (place) => {
    const focused = document.activeElement;
    at = Math.min(Math.max(0, place), steps.length);
    draw(true);
    if (focused.hidden || focused.disabled) (next.hidden ? read : next).focus();
  };
  next.addEventListener("click", () => to(at + 1));
  back.addEventListener("click", () => to(at - 1));
  again.addEventListener("click", () => to(0));
  read.addEventListener("click", () => go("readback"));
  draw(false);
  return { draw };
})();

// ---- rehearse

(() => {
  const HOLD_SECONDS = 0.35; // shorter is a tap
  const TICK_MILLISECONDS = 80;
  const SPIN_CLICKS_A_SECOND = 12;
  const place = $("#rehearse .work");
  const label = make("span");
  const sign = make("span");
  const value = make("p", { class: "value" });
  const pane = make("div", { class: "window" }, make("p", { class: "label" }, label, sign), value);
  const spoken = make("p", { class: "out", role: "status" });
  const say = make("p", { class: "say", role: "status" });
  const keys = make("div", { class: "padkeys", role: "group", "aria-label": "Keys of the drawn keypad" });
  const back = make("button", { type: "button", class: "second" }, "Take the last key back");
  const restart = make("button", { type: "button", class: "second" }, "From the beginning");
  const cut = make("button", { type: "button", class: "second" }, "Cut the power");
  place.append(
    make("div", { class: "pad" }, pane, keys), say, spoken,
    make("p", { class: "go" }, back, restart, cut),
  );

  function draw(display) {
    label.textContent = display.label || tongue(display.words);
    sign.textContent = display.sign;
    value.textContent = display.value || "\u2013 \u2013 \u2013";
  }
  let waiting; // for the keypad to throw away what nobody stored
  function told(answer) {
    clearTimeout(waiting);
    if (answer.discards) waiting = setTimeout(() => told(ask("untouched")), answer.discards * 1000);
    draw(answer.display);
    const d = answer.display;
    spoken.textContent = [d.label, tongue(d.words), d.value, d.sign].filter(Boolean).join(", ");
    say.className = "say " + answer.kind;
    say.replaceChildren(...(answer.head ? [make("strong", {}, answer.head), " "] : []), tongue(answer.says));
    back.disabled = answer.keys === 0;
  }
  const ask = (name, action) => JSON.parse(action ? pocket[name](JSON.stringify(action)) : pocket[name]());

  /** What a press that lasted so long is. */
  function action(key, seconds) {
    if (key.kind === "digit") return { kind: "digit", digit: key.digit };
    const held = seconds >= HOLD_SECONDS;
    if (key.kind === "turn") {
      const clicks = held ? Math.max(1, Math.round((seconds - HOLD_SECONDS) * SPIN_CLICKS_A_SECOND)) : 1;
      return { kind: "turn", clicks: key.clicks * clicks, spun: held };
    }
    return held ? { kind: "hold", key: key.key, seconds } : { kind: "tap", key: key.key };
  }

  let down = null; // the key that is kept down, since when, and its clock
  function press(button, key) {
    if (down) return;
    clearTimeout(waiting);
    const since = performance.now();
    const look = () => draw(ask("peek", action(key, (performance.now() - since) / 1000)));
    button.classList.add("down");
    down = { button, key, since, clock: setInterval(look, TICK_MILLISECONDS) };
    look();
  }
  function release(kept) {
    if (!down) return;
    const { button, key, since, clock } = down;
    clearInterval(clock);
    down = null;
    button.classList.remove("down");
    if (kept) told(ask("press", action(key, (performance.now() - since) / 1000)));
    else told(ask("now"));
  }

  for (const key of JSON.parse(pocket.keys())) {
    const button = make("button", { type: "button" }, key.words);
    let pointed = false;
    button.addEventListener("pointerdown", (event) => {
      if (event.button !== 0) return;
      pointed = true;
      button.setPointerCapture(event.pointerId);
      press(button, key);
    });
    button.addEventListener("pointerup", () => release(true));
    button.addEventListener("pointercancel", () => release(false));
    button.addEventListener("contextmenu", (event) => event.preventDefault());
    button.addEventListener("keydown", (event) => {
      if (event.key !== " " && event.key !== "Enter") return;
      event.preventDefault();
      if (!event.repeat) press(button, key);
    });
    button.addEventListener("keyup", (event) => {
      if (event.key !== " " && event.key !== "Enter") return;
      event.preventDefault();
      release(true);
    });
    button.addEventListener("blur", () => {
      if (down && down.button === button) release(false);
    });
    // A screen reader presses without a pointer and without a key.
    button.addEventListener("click", () => {
      if (!pointed) told(ask("press", action(key, 0)));
      pointed = false;
    });
    button.keypad = key;
    keys.append(button);
  }

  // Digits and arrows work anywhere on this screen.
  const arrows = { ArrowUp: ["UP", 1], ArrowDown: ["DOWN", -1], ArrowRight: [null, 1], ArrowLeft: [null, -1] };
  document.addEventListener("keydown", (event) => {
    if (current !== "rehearse" || event.repeat || event.ctrlKey || event.altKey || event.metaKey) return;
    const [name, clicks] = arrows[event.key] || [];
    const button = [...keys.children].find(({ keypad: k }) =>
      k.kind === "digit" ? String(k.digit) === event.key : k.kind === "turn" ? k.clicks === clicks : name && k.key === name);
    if (!button) return;
    event.preventDefault();
    press(button, button.keypad);
  });
  document.addEventListener("keyup", (event) => {
    if (down && (event.key in arrows || /^[0-9]$/.test(event.key))) release(true);
  });

  back.addEventListener("click", () => told(ask("back")));
  restart.addEventListener("click", () => told(ask("restart")));
  cut.addEventListener("click", () => told(ask("powerCut")));
  told(ask("restart"));
})();

// ---- read it back

const readback = (() => {
  const place = $("#readback .work");
  const asked = JSON.parse(pocket.questions());
  let compared = false;

  function ask(id, label, more) {
    const input = make("input", {
      id, name: id, type: "text", autocomplete: "off", autocapitalize: "none", spellcheck: "false",
      "aria-describedby": id + "-tick", ...more,
    });
    return make(
      "li", { class: "ask" }, make("label", { for: id }, label), input,
      make("span", { class: "tick", id: id + "-tick" }),
    );
  }
  function pick(id, label, options) {
    return make(
      "li", { class: "ask" }, make("label", { for: id }, label),
      make("select", { id, name: id }, ...options.map(([value, words]) => make("option", { value }, words))),
    );
  }

  const result = make("div", { hidden: true, tabindex: "-1" });
  const cold = make(
    "fieldset", { class: "cold" }, make("legend", {}, "Which unit is it in?"),
    make("p", { class: "aside" }, "This keypad can be switched. A cold kiln beside a thermometer settles it; a reading alone never does."),
    make("label", { class: "pick" }, make("input", { type: "checkbox", name: "overnight", id: "overnight" }), "the kiln stood unheated overnight"),
    make(
      "ol", {}, ask("cold-display", "The cold kiln's display reads", { inputmode: "decimal" }),
      ask("cold-thermometer", "A thermometer beside it reads", { inputmode: "decimal" }),
      pick("cold-unit", "The thermometer is in", [["C", "°C"], ["F", "°F"]]),
    ),
  );
  const form = make(
    "form", {},
    make(
      "ol", {}, ask("shown-slot", "Program slot on the display", { inputmode: "numeric" }),
      ...(asked.sign ? [pick("shown-sign", "Unit sign on the display", [["", "none seen"], ["C", "°C"], ["F", "°F"]])] : []),
      ...asked.values.map((words, i) => ask("shown" + (i + 1), words, { inputmode: asked.digits[i] ? "decimal" : "text" })),
    ),
    ...(asked.switchable ? [cold] : []),
    make("p", { class: "go" }, make("button", { class: "main" }, "Compare with the plan")),
  );
  place.append(result, form);

  // What was typed on the bench's own page while it did not answer comes along, and a reload keeps it.
  const TYPED = "heatwright typed";
  const typed = {
    read() {
      try {
        return JSON.parse(sessionStorage.getItem(TYPED)) || {};
      } catch {
        return {};
      }
    },
    write(values) {
      try {
        sessionStorage.setItem(TYPED, JSON.stringify(values));
      } catch {
        // Nothing depends on it.
      }
    },
  };
  const of = new URLSearchParams(location.search).get("plan") || facts.id;
  form.addEventListener("input", () => typed.write({ of, ...Object.fromEntries(new FormData(form)) }));
  const before = typed.read();
  if (before.of === of) {
    for (const [name, words] of Object.entries(before)) {
      const field = form.elements[name];
      if (field) field.type === "checkbox" ? (field.checked = true) : (field.value = words);
    }
  }

  const value = (id) => {
    const field = document.getElementById(id);
    return field ? field.value : "";
  };
  function mark(id, kind, remark) {
    const row = document.getElementById(id).parentElement;
    row.classList.remove("right", "wrong");
    if (kind) row.classList.add(kind);
    row.querySelector(".tick").textContent = tongue(remark || (kind === "right" ? "right" : ""));
    row.querySelector("input").setAttribute("aria-invalid", String(kind === "wrong"));
  }
  function clear() {
    form.reset();
    typed.write({});
    result.hidden = true;
    result.replaceChildren();
    ["shown-slot", ...asked.values.map((_, i) => "shown" + (i + 1))].forEach((id) => mark(id, "", ""));
    compared = false;
  }

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const answer = JSON.parse(
      pocket.compare(
        JSON.stringify({
          slot: value("shown-slot"),
          sign: value("shown-sign"),
          values: asked.values.map((_, i) => value("shown" + (i + 1))),
          overnight: asked.switchable && $("#overnight").checked,
          display: value("cold-display"),
          thermometer: value("cold-thermometer"),
          thermometerUnit: value("cold-unit") || "C",
        }),
      ),
    );
    compared = answer.marks.length > 0;
    result.className = "verdict " + answer.kind;
    result.replaceChildren(
      make("h3", {}, answer.head),
      make("p", { class: "correction" }, answer.correction),
      ...(answer.more.length ? [make("ul", { class: "told" }, ...answer.more.map((line) => make("li", {}, line)))] : []),
      ...(answer.figures.length
        ? [make("dl", { class: "facts" }, ...answer.figures.map((f) => make("div", {}, make("dt", {}, f.label), make("dd", {}, f.text))))]
        : []),
    );
    result.hidden = false;
    answer.marks.forEach((m, i) => mark("shown" + (i + 1), m.mark, m.remark));
    if (answer.slot) mark("shown-slot", answer.slot, "");
    window.scrollTo(0, 0);
    result.focus({ preventScroll: true });
  });

  return {
    /** Who looks at the plan while typing is not blind any more: then it starts again. */
    left() {
      if (!compared) clear();
    },
  };
})();

// ---- start

document.documentElement.classList.add("scripted");
window.addEventListener("hashchange", () => show(location.hash.slice(1), true));
show(location.hash.slice(1) || memory.read().screen || screens[0].id, false);
if (location.hash) requestAnimationFrame(() => window.scrollTo(0, 0));
