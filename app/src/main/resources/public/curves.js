// Curves, on every page: takes over the drawing that the server put there, from the data beside it.
// One figure is one curve: looked along by pointer, slider and keys, zoomed, moved, shown in °C or °F,
// by the clock or from the start, taken away as a file, and, where it has corners, edited.

import { say } from "./say.js";

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sept", "Oct", "Nov", "Dec"];
const DAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];

const WORDS = {
  look: say("Look along the curve"),
  drawn: say("curve"),
  keys: say("Arrow keys look along it, with Shift they move it; plus and minus zoom, 0 shows all."),
  view: say("How it is shown"),
  temperature: say("Temperature in"),
  time: say("Time"),
  clock: say("Clock"),
  elapsed: say("Elapsed"),
  zoom: say("Zoom"),
  out: say("Zoom out"),
  into: say("Zoom in"),
  all: say("All"),
  whole: say("Show all of it"),
  corners: say("Drag corners"),
  take: say("Take it as a file"),
  takes: { png: say("PNG, a picture"), svg: say("SVG, a drawing"), csv: say("CSV, the numbers") },
  band: (low, high) => say("{0} to {1}", low, high),
  now: say("now"),
  sketched: (value) => say("about {0}", value),
  when: say("When"),
  after: say("After"),
  corner: (c) => say("Segment {0}: target {1} {2}, rate {3} {2}/h, hold {4} h.", c.segment, c.target, c.symbol, c.rate, c.hold),
  ramp: (n) => say("End of the ramp of segment {0}", n),
  hold: (n) => say("End of the hold of segment {0}", n),
  day: (time) => say("{0} {1} {2}", say(DAYS[time.getUTCDay()]), time.getUTCDate(), say(MONTHS[time.getUTCMonth()])),
  first: " " + say("(1st)"),
  second: " " + say("(2nd)"),
};

const SVG = "http://www.w3.org/2000/svg";
const HOUR = 3600;
const DAY = 24 * HOUR;
const TIME_STEPS = [60, 120, 300, 600, 900, 1800, HOUR, 2 * HOUR, 3 * HOUR, 6 * HOUR, 12 * HOUR, DAY];
const BRIEF_STEPS = [1, 2, 5, 10, 15, 30, 60, 300, 600, 900, 1800, HOUR];
const DEGREE_STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500];
const ROW_STEPS = [1, 2, 5, 10, 15, 30, 60, 300, 600, 900, 1800, HOUR, 2 * HOUR, 3 * HOUR, 6 * HOUR, 12 * HOUR, DAY];
const MOST_TIMES = 8;
const MOST_DEGREES = 7;
const LABELS_APART = 0.25;
const MOST_ROWS = 24;
const LOOKS = 240;
const DEEPEST = 200;
const DEAD_PIXELS = 8;
const DATE_ROOM = 0.27; // of the frame, that a narrow screen needs from one date to the next
const FILE_WIDTH = 1000;
const FILE_HEIGHT = 560;

const taken = new WeakMap();

/** Takes over every figure in a part of the page that was not taken over yet. */
export function takeAll(within = document) {
  within.querySelectorAll("figure.curves").forEach((figure) => {
    if (!taken.has(figure)) {
      taken.set(figure, new Curves(figure, dataOf(figure)));
    }
  });
}

/** Shows other data in a figure that was taken over; what a person has set stays. */
export function show(figure, data) {
  takeAll(figure.parentElement);
  taken.get(figure).show(data);
}

/** Puts other HTML into a section; figures that were there already stay and show its data. */
export function refill(section, html) {
  const fresh = document.createElement("template");
  fresh.innerHTML = html;
  const nodes = [...fresh.content.childNodes];
  const live = new Map();
  for (const figure of section.querySelectorAll(":scope > figure.curves")) {
    if (nodes.some((node) => node.id === figure.id)) {
      live.set(figure.id, figure);
    }
  }
  for (const node of [...section.childNodes]) {
    if (live.get(node.id) !== node) {
      node.remove();
    }
  }
  let place = section.firstChild;
  for (const node of nodes) {
    const figure = live.get(node.id);
    if (figure) {
      show(figure, dataOf(node));
      const told = figure.querySelector(".told-by");
      const tells = node.querySelector(".told-by");
      if (told && tells) {
        told.textContent = tells.textContent;
      }
      place = figure.nextSibling;
    } else {
      section.insertBefore(node, place);
    }
  }
  takeAll(section);
}

function dataOf(figure) {
  return JSON.parse(figure.querySelector("script.data").textContent);
}

function remembered(key) {
  try {
    return localStorage.getItem("heatwright." + key);
  } catch {
    return null; // a browser may forbid it
  }
}

function remember(key, value) {
  try {
    localStorage.setItem("heatwright." + key, value);
  } catch {
    // then it holds for this page only
  }
}

// ---- small tools

function element(name, attributes = {}, ...inside) {
  const node = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    node.setAttribute(key, value);
  }
  node.append(...inside);
  return node;
}

function shape(name, attributes = {}, text = "") {
  const node = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) {
    node.setAttribute(key, value);
  }
  if (text) {
    node.textContent = text;
  }
  return node;
}

const percent = (share) => (100 * share).toFixed(2) + "%";
const clamp = (value, least, most) => Math.min(most, Math.max(least, value));
const two = (number) => String(number).padStart(2, "0");
const tidy = (number) => String(Math.round(number * 100) / 100);

function nice(steps, span, most) {
  return steps.find((step) => span / step <= most) ?? Math.ceil(span / most / DAY) * DAY;
}

/** The value of a curve at a time, straight between its points; empty outside of them. */
function valueAt(seconds, values, at) {
  if (!seconds.length || at < seconds[0] || at > seconds[seconds.length - 1]) {
    return undefined;
  }
  let low = 0;
  let high = seconds.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (seconds[middle] <= at) {
      low = middle;
    } else {
      high = middle;
    }
  }
  const span = seconds[high] - seconds[low];
  return values[low] + (span > 0 ? ((at - seconds[low]) / span) * (values[high] - values[low]) : 0);
}

/** Hours and minutes, as the fields write a hold. */
function hourMinute(minutes) {
  return Math.floor(minutes / 60) + ":" + two(Math.round(minutes % 60));
}

function minutesOf(text) {
  const parts = /^(\d{1,4}):([0-5]\d)$/.exec(text.trim());
  return parts ? 60 * Number(parts[1]) + Number(parts[2]) : 0;
}

function numberOf(text) {
  const number = Number(text.trim().replace(",", "."));
  return text.trim() !== "" && Number.isFinite(number) ? number : undefined;
}

// ---- one figure

class Curves {
  constructor(figure, data) {
    this.figure = figure;
    this.id = figure.id;
    this.drawing = figure.querySelector("svg.drawing");
    this.back = figure.querySelector(".back");
    this.plane = figure.querySelector(".plane");
    this.front = figure.querySelector(".front");
    this.data = data;
    this.unit = remembered("unit") ?? data.unit;
    this.elapsed = remembered("time") === "elapsed";
    this.at = data.nowSeconds ?? data.lengthSeconds / 2;
    this.editing = matchMedia("(pointer: fine)").matches;
    this.handles = [];
    this.fingers = new Map();
    this.whole();
    this.furnish();
    this.listen();
    this.draw();
  }

  /** Other data; a view that was set stays where it still shows something. */
  show(data) {
    this.data = data;
    this.drawing.setAttribute("aria-label", data.summary);
    if (!this.dragged) {
      if (!this.near || this.view.from >= data.lengthSeconds) {
        this.whole();
      } else {
        this.setView(this.view);
      }
      this.at = clamp(this.at, 0, data.lengthSeconds);
    }
    this.draw();
  }

  // ---- what is seen

  whole() {
    const { lengthSeconds, bottomCelsius, topCelsius } = this.data;
    this.view = { from: 0, to: lengthSeconds, bottom: bottomCelsius, top: topCelsius };
    this.near = false;
  }

  zoomed() {
    return this.near;
  }

  setView({ from, to, bottom, top }) {
    const { lengthSeconds, bottomCelsius, topCelsius } = this.data;
    const wide = clamp(to - from, lengthSeconds / DEEPEST, lengthSeconds);
    const tall = clamp(top - bottom, (topCelsius - bottomCelsius) / DEEPEST, topCelsius - bottomCelsius);
    const left = clamp(from, 0, lengthSeconds - wide);
    const low = clamp(bottom, bottomCelsius, topCelsius - tall);
    this.view = { from: left, to: left + wide, bottom: low, top: low + tall };
    this.near = wide < 0.999 * lengthSeconds;
  }

  /** Nearer by a factor, with one place staying where it is. */
  zoom(factor, at = this.at, celsius = this.middle(at)) {
    const { from, to, bottom, top } = this.view;
    this.setView({
      from: at - (at - from) / factor,
      to: at + (to - at) / factor,
      bottom: celsius - (celsius - bottom) / factor,
      top: celsius + (top - celsius) / factor,
    });
    this.draw();
  }

  /** What a zoom by keys holds fast: the most telling curve at that time. */
  middle(at) {
    for (const role of ["display", "measured", "setpoint"]) {
      const value = this.data.lines
        .filter((line) => line.role === role)
        .map((line) => valueAt(line.seconds, line.celsius, at))
        .find((celsius) => celsius !== undefined);
      if (value !== undefined) {
        return value;
      }
    }
    return (this.view.bottom + this.view.top) / 2;
  }

  move(seconds, kelvins) {
    const { from, to, bottom, top } = this.view;
    this.setView({ from: from + seconds, to: to + seconds, bottom: bottom + kelvins, top: top + kelvins });
    this.draw();
  }

  x(seconds) {
    return (seconds - this.view.from) / (this.view.to - this.view.from);
  }

  y(celsius) {
    return (this.view.top - celsius) / (this.view.top - this.view.bottom);
  }

  // ---- words

  symbol(unit = this.unit) {
    return unit === "F" ? "°F" : "°C";
  }

  degrees(celsius, unit = this.unit) {
    return unit === "F" ? celsius * 1.8 + 32 : celsius;
  }

  celsius(degrees, unit) {
    return unit === "F" ? (degrees - 32) / 1.8 : degrees;
  }

  number(celsius) {
    return String(Math.round(this.degrees(celsius)));
  }

  between(low, high) {
    const [least, most] = [this.number(low), this.number(high)];
    return least === most ? least : WORDS.band(least, most);
  }

  byClock() {
    return this.data.clock !== null && !this.elapsed;
  }

  offset(seconds) {
    const { offsets } = this.data.clock;
    return offsets.findLast((offset) => offset.fromSeconds <= seconds)?.offsetSeconds ?? offsets[0].offsetSeconds;
  }

  /** The clock on the wall, to the nearest minute. */
  wall(seconds) {
    const { startMillis, offsets } = this.data.clock;
    const utc = Math.floor((startMillis + seconds * 1000 + 30_000) / 60_000) * 60_000;
    const local = new Date(utc + this.offset(seconds) * 1000);
    let twice = "";
    for (let i = 1; i < offsets.length; i++) {
      const back = offsets[i - 1].offsetSeconds - offsets[i].offsetSeconds;
      const since = seconds - offsets[i].fromSeconds;
      if (back > 0 && since >= -back && since < back) {
        twice = since < 0 ? WORDS.first : WORDS.second;
      }
    }
    return {
      day: WORDS.day(local),
      clock: two(local.getUTCHours()) + ":" + two(local.getUTCMinutes()) + twice,
    };
  }

  since(seconds) {
    if (this.data.brief) {
      return Math.round(seconds) + " s";
    }
    const minutes = Math.floor(seconds / 60 + 1e-6);
    return "+" + hourMinute(minutes) + " h";
  }

  when(seconds) {
    if (!this.byClock()) {
      return this.since(seconds);
    }
    const { day, clock } = this.wall(seconds);
    return day + " " + clock;
  }

  /** What can be read off at a time, in a sentence. */
  says(at) {
    const parts = [];
    const { band, lines } = this.data;
    const heard = new Set();
    for (const line of [...lines].reverse()) {
      if (heard.has(line.name)) {
        continue;
      }
      if (line.role === "readings") {
        const nearest = this.nearest(line, at);
        if (nearest) {
          parts.push(`${line.says} ${this.number(nearest.celsius)} ${this.symbol()} (${this.when(nearest.seconds)})`);
        }
        continue;
      }
      const value = valueAt(line.seconds, line.celsius, at);
      if (value === undefined) {
        continue;
      }
      heard.add(line.name);
      const low = band && line.role === "display" ? valueAt(band.seconds, band.lowCelsius, at) : undefined;
      const told =
        low !== undefined
          ? this.between(low, valueAt(band.seconds, band.highCelsius, at))
          : line.role === "display" ? WORDS.sketched(this.number(value)) : this.number(value);
      parts.push(`${line.says} ${told} ${this.symbol()}`);
    }
    return `${this.when(at)}: ${parts.join("; ")}.`;
  }

  nearest(line, at) {
    const near = (this.view.to - this.view.from) / 20;
    let found;
    line.seconds.forEach((seconds, i) => {
      const away = Math.abs(seconds - at);
      if (away <= near && (!found || away < found.away)) {
        found = { away, seconds, celsius: line.celsius[i] };
      }
    });
    return found;
  }

  // ---- drawing

  draw() {
    const { from, to, bottom, top } = this.view;
    this.back.replaceChildren(...this.backShapes());
    this.plane.setAttribute("viewBox", [from, -top, to - from, top - bottom].map(tidy).join(" "));
    this.plane.replaceChildren(...this.planeShapes());
    this.front.replaceChildren(...this.frontShapes());
    this.drawCorners();
    this.drawLegend();
    this.drawing.classList.toggle("zoomed", this.zoomed());
    this.figure.querySelector(".all").disabled = !this.zoomed();
    const step = this.step();
    this.slider.min = String(Math.ceil(from / step) * step);
    this.slider.max = String(Math.floor(to / step) * step);
    this.slider.step = String(step);
    this.look(this.at);
    const table = this.figure.querySelector("details.values");
    if (table?.open) {
      this.fillTable();
    } else {
      this.tableStale = true;
    }
  }

  /** How far one key press looks along. */
  step() {
    const span = this.view.to - this.view.from;
    return this.data.brief ? Math.max(1, nice([1, 2, 5, 10, 30], span, LOOKS)) : Math.max(60, nice([60, 120, 300, 600, 900, 1800], span, LOOKS));
  }

  backShapes() {
    const shapes = [];
    const { stretches, limits, segments, nowSeconds } = this.data;
    const inside = (share) => share >= -0.0001 && share <= 1.0001;
    for (const stretch of stretches) {
      const left = clamp(this.x(stretch.fromSeconds), 0, 1);
      const right = clamp(this.x(stretch.toSeconds), 0, 1);
      if (stretch.toSeconds > stretch.fromSeconds && right > left) {
        shapes.push(shape("rect", { class: stretch.during, x: percent(left), y: 0, width: percent(right - left), height: "100%" }));
      }
    }
    for (const tick of this.temperatureTicks()) {
      const y = percent(this.y(tick.celsius));
      shapes.push(shape("line", { class: "rule", x1: 0, x2: "100%", y1: y, y2: y }));
      shapes.push(shape("text", { class: "axis", x: -8, y, dy: "0.35em", "text-anchor": "end" }, tick.label));
    }
    for (const tick of this.timeTicks()) {
      const x = percent(this.x(tick.seconds));
      shapes.push(shape("line", { class: tick.day ? "rule midnight" : "rule", x1: x, x2: x, y1: 0, y2: "100%" }));
      shapes.push(shape("text", { class: tick.spare ? "axis spare" : "axis", x, y: "100%", dy: "1.5em", "text-anchor": "middle" }, tick.label));
      if (tick.day) {
        shapes.push(shape("text", { class: tick.spareDay ? "axis date spare" : "axis date", x, y: "100%", dy: "2.9em", "text-anchor": "middle" }, tick.day));
      }
    }
    for (const part of segments) {
      const end = this.x(part.toSeconds);
      if (inside(end)) {
        shapes.push(shape("line", { class: "part", x1: percent(end), x2: percent(end), y1: "100%", y2: "97%" }));
      }
      const left = clamp(this.x(part.fromSeconds), 0, 1);
      const right = clamp(end, 0, 1);
      if (right - left > 0.04) {
        shapes.push(shape("text", { class: "part", x: percent((left + right) / 2), y: "100%", dy: "-0.5em", "text-anchor": "middle" }, String(part.number)));
      }
    }
    for (const limit of limits) {
      const y = clamp(this.y(limit.celsius), 0, 1);
      if (y > 0) {
        shapes.push(shape("rect", { class: "limit", x: 0, y: 0, width: "100%", height: percent(y), fill: `url(#${this.id}-hatch)` }));
        if (y < 1) {
          shapes.push(shape("line", { class: "limit", x1: 0, x2: "100%", y1: percent(y), y2: percent(y) }));
        }
        const words = shape("text", { class: "axis limit", x: 6, y: percent(Math.min(y, 0.94)), dy: "1.2em" }, `${this.number(limit.celsius)} ${this.symbol()}`);
        words.append(shape("tspan", { class: "spare" }, ": " + limit.why));
        shapes.push(words);
      }
    }
    let lastNamed = -1;
    for (const stretch of stretches) {
      const x = this.x(stretch.fromSeconds);
      if (stretch.toSeconds <= stretch.fromSeconds && inside(x)) {
        shapes.push(shape("line", { class: "event", x1: percent(x), x2: percent(x), y1: 0, y2: "100%" }));
      }
      if (stretch.during === "event" && inside(x) && x - lastNamed >= LABELS_APART) {
        lastNamed = x;
        shapes.push(shape("text", { class: "axis event", x: percent(x), y: 0, dx: 5, dy: "1.2em" }, stretch.label));
      }
    }
    if (nowSeconds !== null && inside(this.x(nowSeconds))) {
      const x = percent(this.x(nowSeconds));
      shapes.push(shape("line", { class: "now", x1: x, x2: x, y1: 0, y2: "100%" }));
      shapes.push(shape("text", { class: "axis now", x, y: 0, dx: 5, dy: "1.2em" }, WORDS.now));
    }
    return shapes;
  }

  planeShapes() {
    const { band, lines } = this.data;
    const shapes = [];
    if (band) {
      const high = band.seconds.map((seconds, i) => `${seconds} ${-band.highCelsius[i]}`);
      const low = band.seconds.map((seconds, i) => `${seconds} ${-band.lowCelsius[i]}`).reverse();
      shapes.push(shape("path", { class: "band", d: `M${high.concat(low).join("L")}Z` }));
    }
    let inside = 0;
    for (const line of lines) {
      if (line.role !== "readings") {
        const look = line.role === "inside" ? `inside n${inside++ % 4}` : line.role;
        shapes.push(shape("path", { class: look, d: "M" + line.seconds.map((seconds, i) => `${seconds} ${-line.celsius[i]}`).join("L") }));
      }
    }
    return shapes;
  }

  frontShapes() {
    const shapes = [];
    const inside = this.data.lines.filter((line) => line.role === "inside");
    if (inside.length > 1) {
      inside.slice(0, 12).forEach((line, i) => {
        const at = this.view.from + (this.view.to - this.view.from) * (0.3 + 0.12 * (i % 5));
        const celsius = valueAt(line.seconds, line.celsius, at);
        if (celsius !== undefined && this.y(celsius) > 0 && this.y(celsius) < 1) {
          shapes.push(shape("text", { class: "tag", x: percent(this.x(at)), y: percent(this.y(celsius)), dy: "-0.4em", "text-anchor": "middle" }, "abcdefghijkl"[i]));
        }
      });
    }
    for (const line of this.data.lines) {
      if (line.role === "readings") {
        line.seconds.forEach((seconds, i) => {
          const [x, y] = [this.x(seconds), this.y(line.celsius[i])];
          if (x >= 0 && x <= 1 && y >= 0 && y <= 1) {
            shapes.push(shape("circle", { class: "readings", cx: percent(x), cy: percent(y), r: 4.5 }));
          }
        });
      }
    }
    return shapes;
  }

  temperatureTicks() {
    const low = this.degrees(this.view.bottom);
    const high = this.degrees(this.view.top);
    const step = nice(DEGREE_STEPS, high - low, MOST_DEGREES);
    const ticks = [];
    for (let i = Math.ceil(low / step - 1e-6); i * step <= high + 1e-6; i++) {
      ticks.push({ celsius: this.celsius(i * step, this.unit), label: String(i * step) });
    }
    if (ticks.length) {
      ticks[ticks.length - 1].label += " " + this.symbol();
    }
    return ticks;
  }

  timeTicks() {
    const { from, to } = this.view;
    const ticks = [];
    if (!this.byClock()) {
      const step = nice(this.data.brief ? BRIEF_STEPS : this.stepsFor(to - from), to - from, MOST_TIMES);
      for (let i = Math.ceil(from / step - 1e-6); i * step <= to; i++) {
        ticks.push({ seconds: i * step, label: this.since(i * step), day: "" });
      }
    } else {
      this.clockTicks(ticks);
    }
    let spare = false;
    ticks.forEach((tick, i) => {
      const newDay = tick.day !== "" && i > 0;
      if (newDay && !spare && ticks[i - 1].day === "") {
        ticks[i - 1].spare = true; // too close to the day
      }
      spare = !newDay && i > 0 && !spare;
      tick.spare = spare;
    });
    const dated = ticks.filter((tick) => tick.day !== "");
    dated.forEach((tick, i) => {
      tick.spareDay = i + 1 < dated.length && this.x(dated[i + 1].seconds) - this.x(tick.seconds) < DATE_ROOM;
    });
    return ticks;
  }

  /** Whole plans have no finer ticks than five minutes; what is looked at closely has. */
  stepsFor(span) {
    return this.zoomed() || span < HOUR / 3 ? TIME_STEPS : TIME_STEPS.slice(2);
  }

  clockTicks(ticks) {
    const { from, to } = this.view;
    const { startMillis } = this.data.clock;
    const step = nice(this.stepsFor(to - from), to - from, MOST_TIMES);
    const raster = Math.min(step, DAY);
    let previous = -Infinity;
    let previousDay = "";
    const local = (seconds) => startMillis / 1000 + seconds + this.offset(seconds);
    for (let place = Math.floor(local(from) / raster) - 2; ; place++) {
      // Where the wall shows this round time: its offset is that in force then.
      let seconds = place * raster - startMillis / 1000 - this.offset(from);
      seconds = place * raster - startMillis / 1000 - this.offset(seconds);
      if (seconds > to) {
        return;
      }
      if (seconds < from || seconds < previous + 0.6 * step) {
        continue;
      }
      const { day, clock } = this.wall(seconds);
      ticks.push({ seconds, label: clock, day: day === previousDay ? "" : day });
      previous = seconds;
      previousDay = day;
    }
  }

  drawLegend() {
    const kinds = this.legend();
    const list = this.figure.querySelector("ul.legend");
    list.replaceChildren(
      ...kinds.map(({ look, kind, tag, label }) => {
        const sample = shape("svg", { width: 34, height: 12, "aria-hidden": "true" });
        if (kind === "banded") {
          sample.append(shape("rect", { class: "band", width: 34, height: 12 }));
        }
        if (kind === "area") {
          sample.append(shape("rect", { class: look, width: 34, height: 12 }));
        } else if (kind === "hatch") {
          sample.append(shape("rect", { class: "limit", width: 34, height: 12, fill: `url(#${this.id}-hatch)` }));
        } else if (kind === "dot") {
          sample.append(shape("circle", { class: "readings", cx: 17, cy: 6, r: 4.5 }));
        } else {
          sample.append(shape("line", { class: look, x1: 1, x2: 33, y1: 6, y2: 6 }));
        }
        const entry = element("li", {}, sample);
        if (tag) {
          entry.append(" ", element("strong", {}, tag));
        }
        entry.append(" " + label);
        return entry;
      }),
    );
  }

  legend() {
    const { band, lines, limits, stretches } = this.data;
    const keys = new Map();
    const places = [];
    const inside = lines.filter((line) => line.role === "inside");
    for (const line of [...lines].reverse()) {
      if (line.role === "inside") {
        const i = inside.indexOf(line);
        places.unshift({ look: `inside n${i % 4}`, kind: "line", tag: inside.length > 1 ? ("abcdefghijkl"[i] ?? "") : "", label: line.name });
      } else if (line.role === "readings") {
        keys.set(line.name, { look: "readings", kind: "dot", label: line.name });
      } else if (line.role === "display" && band) {
        keys.set(line.name, { look: "display", kind: "banded", label: band.name });
      } else {
        keys.set(line.name, { look: line.role, kind: "line", label: line.name });
      }
    }
    places.forEach((place) => keys.set(place.label, place));
    if (limits.length) {
      keys.set("limit", { look: "limit", kind: "hatch", label: say("do not enter") });
    }
    for (const stretch of stretches) {
      const event = stretch.during === "event";
      const label = event ? say("happened") : stretch.label;
      if ((!event || stretch.toSeconds > stretch.fromSeconds) && !keys.has(label)) {
        keys.set(label, { look: stretch.during, kind: "area", label });
      }
    }
    return [...keys.values()];
  }

  // ---- what is around the drawing

  furnish() {
    const caption = this.figure.querySelector("figcaption");
    const table = caption.querySelector("details.values");
    this.drawing.setAttribute("role", "application");
    this.drawing.setAttribute("aria-roledescription", WORDS.drawn);
    this.drawing.setAttribute("aria-label", this.data.summary);
    this.drawing.setAttribute("aria-describedby", this.id + "-keys");
    this.drawing.setAttribute("tabindex", "0");
    this.cursor = shape("line", { class: "cursor", x1: 0, x2: 0, y1: 0, y2: "100%" });
    this.marks = shape("g", { class: "marks" });
    this.knobs = shape("g", { class: "knobs" });
    this.drawing.append(this.cursor, this.marks, this.knobs);

    this.slider = element("input", { type: "range", id: this.id + "-look" });
    this.seen = element("output", { id: this.id + "-seen", for: this.id + "-look", "aria-live": "off" });
    const look = element("div", { class: "look-along" }, element("label", { for: this.id + "-look" }, WORDS.look), this.slider, this.seen);

    const unit = this.choice(WORDS.temperature, [["C", "°C"], ["F", "°F"]], () => this.unit, (chosen) => {
      this.unit = chosen;
      remember("unit", chosen);
      document.dispatchEvent(new CustomEvent("curves:shown", { detail: this }));
    });
    const tools = element("div", { class: "tools", role: "group", "aria-label": WORDS.view }, unit);
    if (this.data.clock) {
      tools.append(
        this.choice(WORDS.time, [["clock", WORDS.clock], ["elapsed", WORDS.elapsed]], () => (this.elapsed ? "elapsed" : "clock"), (chosen) => {
          this.elapsed = chosen === "elapsed";
          remember("time", chosen);
          document.dispatchEvent(new CustomEvent("curves:shown", { detail: this }));
        }),
      );
    }
    const button = (words, name, act, classes = "") => {
      const made = element("button", { type: "button", class: classes, "aria-label": name }, words);
      made.addEventListener("click", act);
      return made;
    };
    tools.append(
      element(
        "span",
        { class: "several", role: "group", "aria-label": WORDS.zoom },
        button("−", WORDS.out, () => this.zoom(1 / 1.5)),
        button("+", WORDS.into, () => this.zoom(1.5)),
        button(WORDS.all, WORDS.whole, () => this.reset(), "all"),
      ),
    );
    if (this.data.corners.length) {
      const edit = button(WORDS.corners, WORDS.corners, () => {
        this.editing = !this.editing;
        edit.setAttribute("aria-pressed", String(this.editing));
        this.draw();
      });
      edit.setAttribute("aria-pressed", String(this.editing));
      tools.append(element("span", { class: "several" }, edit));
    }
    const take = element(
      "details",
      { class: "takes", id: this.id + "-take" },
      element("summary", {}, WORDS.take),
      element(
        "p",
        {},
        ...["png", "svg", "csv"].map((kind) => button(kind.toUpperCase(), WORDS.takes[kind], () => this.takeAs(kind))),
      ),
    );
    const keys = element("p", { class: "aside keys-help", id: this.id + "-keys" }, WORDS.keys);
    caption.insertBefore(look, caption.querySelector("ul.legend"));
    caption.insertBefore(tools, table);
    caption.insertBefore(keys, table);
    caption.append(take);
    table.addEventListener("toggle", () => table.open && this.tableStale && this.fillTable());
    this.figure.classList.add("taken");
  }

  /** Two or more of which one holds. */
  choice(name, options, held, choose) {
    const group = element("span", { class: "several", role: "group", "aria-label": name });
    const mark = () => {
      for (const button of group.children) {
        button.setAttribute("aria-pressed", String(button.value === held()));
      }
    };
    for (const [value, words] of options) {
      const button = element("button", { type: "button", value }, words);
      button.addEventListener("click", () => {
        choose(value);
        mark();
        this.draw();
      });
      group.append(button);
    }
    // The other figures of the page follow.
    document.addEventListener("curves:shown", (event) => {
      if (event.detail !== this && this.figure.isConnected) {
        this.unit = event.detail.unit;
        this.elapsed = event.detail.elapsed;
        mark();
        this.draw();
      }
    });
    mark();
    return group;
  }

  reset() {
    this.whole();
    this.draw();
  }

  // ---- looking along

  look(seconds, aloud = false) {
    this.at = clamp(seconds, this.view.from, this.view.to);
    const x = percent(this.x(this.at));
    this.cursor.setAttribute("x1", x);
    this.cursor.setAttribute("x2", x);
    const heard = new Set();
    this.marks.replaceChildren(
      ...[...this.data.lines].reverse().flatMap((line) => {
        const celsius = line.role === "readings" || heard.has(line.name) ? undefined : valueAt(line.seconds, line.celsius, this.at);
        const y = celsius === undefined ? -1 : this.y(celsius);
        if (y < 0 || y > 1) {
          return [];
        }
        heard.add(line.name);
        return [shape("circle", { class: "mark", cx: x, cy: percent(y), r: 3 })];
      }),
    );
    const says = this.says(this.at);
    this.slider.value = String(this.at);
    this.slider.setAttribute("aria-valuetext", says);
    this.seen.setAttribute("aria-live", aloud ? "polite" : "off");
    if (!this.saying) {
      this.seen.textContent = says;
    }
  }

  /** By keys: the view follows. */
  lookTo(seconds) {
    const at = clamp(seconds, 0, this.data.lengthSeconds);
    const { from, to } = this.view;
    if (at < from || at > to) {
      const beyond = at < from ? at - from : at - to;
      this.at = at;
      this.move(beyond, 0);
    }
    this.look(at, true);
  }

  seconds(clientX) {
    const box = this.drawing.getBoundingClientRect();
    return this.view.from + ((clientX - box.left) / box.width) * (this.view.to - this.view.from);
  }

  celsiusAt(clientY) {
    const box = this.drawing.getBoundingClientRect();
    return this.view.top - ((clientY - box.top) / box.height) * (this.view.top - this.view.bottom);
  }

  listen() {
    this.slider.addEventListener("input", () => this.look(Number(this.slider.value)));
    this.slider.addEventListener("keydown", (event) => this.viewKeys(event));
    this.drawing.addEventListener("keydown", (event) => {
      if (event.target === this.drawing) {
        this.drawingKeys(event);
      }
    });
    this.drawing.addEventListener("pointerdown", (event) => this.down(event));
    this.drawing.addEventListener("pointermove", (event) => this.follow(event));
    for (const end of ["pointerup", "pointercancel"]) {
      this.drawing.addEventListener(end, (event) => this.up(event));
    }
    this.drawing.addEventListener("dblclick", (event) => {
      if (!event.target.closest(".corner")) {
        this.reset();
      }
    });
    this.drawing.addEventListener(
      "wheel",
      (event) => {
        // Who scrolls past the drawing scrolls the page; who chose it, or pinches, zooms.
        if (event.ctrlKey || this.drawing.contains(document.activeElement)) {
          event.preventDefault();
          this.zoom(Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.002)), this.seconds(event.clientX), this.celsiusAt(event.clientY));
        }
      },
      { passive: false },
    );
  }

  /** Keys that zoom, wherever in the figure one is; true if it was one. */
  viewKeys(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) {
      return false;
    }
    const act = {
      "+": () => this.zoom(1.5),
      "=": () => this.zoom(1.5),
      "-": () => this.zoom(1 / 1.5),
      0: () => this.reset(),
    }[event.key];
    if (act) {
      event.preventDefault();
      act();
    }
    return Boolean(act);
  }

  drawingKeys(event) {
    if (this.viewKeys(event) || event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    const step = this.step();
    const at = Math.round(this.at / step) * step;
    const { from, to, bottom, top } = this.view;
    const act = event.shiftKey
      ? {
          ArrowLeft: () => this.move((from - to) / 10, 0),
          ArrowRight: () => this.move((to - from) / 10, 0),
          ArrowUp: () => this.move(0, (top - bottom) / 10),
          ArrowDown: () => this.move(0, (bottom - top) / 10),
        }[event.key]
      : {
          ArrowLeft: () => this.lookTo(at - step),
          ArrowRight: () => this.lookTo(at + step),
          PageDown: () => this.lookTo(at - 10 * step),
          PageUp: () => this.lookTo(at + 10 * step),
          Home: () => this.lookTo(0),
          End: () => this.lookTo(this.data.lengthSeconds),
        }[event.key];
    if (act) {
      event.preventDefault();
      this.saying = false;
      act();
    }
  }

  down(event) {
    const knob = event.target.closest(".corner");
    if (knob && event.button === 0) {
      this.grab(event, this.handles.find((handle) => handle.node === knob));
      return;
    }
    this.fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    this.saying = false;
    if (this.zoomed() || this.fingers.size > 1) {
      this.drawing.setPointerCapture(event.pointerId);
    }
  }

  follow(event) {
    if (this.dragged) {
      this.drag(event);
      return;
    }
    const before = this.fingers.get(event.pointerId);
    if (before && this.fingers.size === 2) {
      this.pinch(event, before);
    } else if (before && this.zoomed()) {
      const box = this.drawing.getBoundingClientRect();
      this.move(
        ((before.x - event.clientX) / box.width) * (this.view.to - this.view.from),
        ((event.clientY - before.y) / box.height) * (this.view.top - this.view.bottom),
      );
    } else if (!event.target.closest(".corner")) {
      this.saying = false;
      this.look(this.seconds(event.clientX));
    }
    if (before) {
      this.fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    }
  }

  pinch(event, before) {
    const other = [...this.fingers].find(([id]) => id !== event.pointerId)[1];
    const was = Math.hypot(before.x - other.x, before.y - other.y);
    const is = Math.hypot(event.clientX - other.x, event.clientY - other.y);
    if (was > 10 && is > 10) {
      this.zoom(is / was, this.seconds((event.clientX + other.x) / 2), this.celsiusAt((event.clientY + other.y) / 2));
    }
  }

  up(event) {
    this.fingers.delete(event.pointerId);
    if (this.dragged) {
      this.dragged = undefined;
      this.figure.classList.remove("dragging");
      this.show(this.data);
    }
  }

  // ---- corners

  field(kind, corner) {
    return document.getElementById(kind + corner.segment);
  }

  /** What a segment's fields say now. */
  said(corner) {
    return {
      segment: corner.segment,
      symbol: this.symbol(corner.unit),
      target: this.field("target", corner)?.value ?? "",
      rate: this.field("rate", corner)?.value ?? "",
      hold: this.field("hold", corner)?.value ?? "",
    };
  }

  drawCorners() {
    const corners = this.editing ? this.data.corners.filter((corner) => this.field("target", corner)) : [];
    const wanted = corners.flatMap((corner) => [
      { corner, kind: "ramp" },
      { corner, kind: "hold" },
    ]);
    while (this.handles.length > wanted.length) {
      this.handles.pop().node.remove();
    }
    while (this.handles.length < wanted.length) {
      this.handles.push(this.handle(this.handles.length));
    }
    const width = this.drawing.getBoundingClientRect().width || 600;
    wanted.forEach(({ corner, kind }, i) => {
      const handle = this.handles[i];
      Object.assign(handle, { corner, kind });
      if (this.dragged?.handle === handle) {
        return;
      }
      const seconds = kind === "ramp" ? corner.reachedSeconds : corner.endSeconds;
      const beside = kind === "hold" && (this.x(corner.endSeconds) - this.x(corner.reachedSeconds)) * width < 26 ? 26 : 0;
      this.place(handle, seconds, corner.targetCelsius, beside);
    });
  }

  handle(index) {
    const grip = shape("g", { role: "slider", tabindex: 0, id: `${this.id}-corner${index}` });
    grip.append(shape("circle", { class: "reach", r: 23 }), shape("circle", { class: "knob", r: 7 }));
    const node = shape("svg", { class: "corner", overflow: "visible" });
    node.append(grip);
    const handle = { node, grip };
    grip.addEventListener("keydown", (event) => this.cornerKeys(event, handle));
    grip.addEventListener("focus", () => this.tell(handle));
    grip.addEventListener("blur", () => {
      this.saying = false;
      this.look(this.at);
    });
    this.knobs.append(node);
    return handle;
  }

  place(handle, seconds, celsius, beside = 0) {
    const [x, y] = [this.x(seconds), this.y(celsius)];
    handle.node.setAttribute("x", percent(x));
    handle.node.setAttribute("y", percent(y));
    handle.node.setAttribute("class", `corner ${handle.kind}`);
    handle.grip.setAttribute("transform", `translate(${beside} 0)`);
    const out = x < -0.001 || x > 1.001 || y < -0.001 || y > 1.001;
    handle.node.setAttribute("visibility", out ? "hidden" : "visible");
    handle.grip.setAttribute("tabindex", out ? -1 : 0);
    const { corner, kind } = handle;
    handle.grip.setAttribute("aria-label", kind === "ramp" ? WORDS.ramp(corner.segment) : WORDS.hold(corner.segment));
    handle.grip.setAttribute("aria-orientation", "vertical");
    handle.grip.setAttribute("aria-valuemin", "0");
    handle.grip.setAttribute("aria-valuemax", tidy(Math.round(this.degrees(2000, corner.unit))));
    this.value(handle);
  }

  value(handle) {
    const said = this.said(handle.corner);
    handle.grip.setAttribute("aria-valuenow", tidy(numberOf(said.target) ?? Math.round(this.degrees(handle.corner.targetCelsius, handle.corner.unit))));
    handle.grip.setAttribute("aria-valuetext", WORDS.corner(said));
  }

  /** Says what the corner's segment is, in the place of what the curve says. */
  tell(handle) {
    this.saying = true;
    this.value(handle);
    this.seen.setAttribute("aria-live", "off"); // the corner itself speaks
    this.seen.textContent = WORDS.corner(this.said(handle.corner));
  }

  put(kind, corner, text) {
    const field = this.field(kind, corner);
    if (field && field.value !== text) {
      field.value = text;
      field.dispatchEvent(new Event("input", { bubbles: true }));
    }
  }

  /** Degrees of the fields between where the ramp begins and its target. */
  rise(corner) {
    const target = numberOf(this.said(corner).target) ?? this.degrees(corner.targetCelsius, corner.unit);
    return Math.abs(target - this.degrees(corner.fromCelsius, corner.unit));
  }

  putTarget(corner, degrees) {
    const step = corner.targetStep;
    const most = this.degrees(2000, corner.unit);
    const least = this.degrees(0, corner.unit);
    this.put("target", corner, tidy(clamp(Math.round(degrees / step) * step, Math.ceil(least / step) * step, Math.floor(most / step) * step)));
  }

  putRate(corner, perHour) {
    const step = corner.rateStep ?? 0.01;
    this.put("rate", corner, tidy(clamp(Math.round(perHour / step) * step, step, 9999)));
  }

  putHold(corner, minutes) {
    const step = corner.holdStepMinutes;
    this.put("hold", corner, hourMinute(Math.max(0, Math.round(minutes / step) * step)));
  }

  /** Time of the ramp as its fields would have it, s; how long it takes where it is the fastest. */
  paper(corner) {
    const rate = numberOf(this.said(corner).rate);
    return rate ? (this.rise(corner) / rate) * HOUR : corner.reachedSeconds - corner.fromSeconds;
  }

  cornerKeys(event, handle) {
    if (this.viewKeys(event) || event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    const { corner, kind } = handle;
    const many = event.shiftKey ? 10 : 1;
    const said = this.said(corner);
    const target = numberOf(said.target) ?? this.degrees(corner.targetCelsius, corner.unit);
    const later = (way) => {
      if (kind === "hold") {
        this.putHold(corner, minutesOf(said.hold) + way * many * corner.holdStepMinutes);
      } else if (corner.rampStepMinutes) {
        const minutes = this.paper(corner) / 60 + way * many * corner.rampStepMinutes;
        this.putRate(corner, (60 * this.rise(corner)) / Math.max(corner.rampStepMinutes, Math.round(minutes)));
      } else {
        const rate = numberOf(said.rate);
        if (rate) {
          this.putRate(corner, rate - way * many * corner.rateStep);
        } else if (way > 0) {
          this.putRate(corner, (this.rise(corner) * HOUR) / this.paper(corner) - corner.rateStep);
        }
      }
    };
    const act = {
      ArrowUp: () => this.putTarget(corner, target + many * corner.targetStep),
      ArrowDown: () => this.putTarget(corner, target - many * corner.targetStep),
      ArrowRight: () => later(1),
      ArrowLeft: () => later(-1),
      Enter: () => this.field(kind === "hold" ? "hold" : "target", corner).focus(),
    }[event.key];
    if (act) {
      event.preventDefault();
      act();
      if (event.key !== "Enter") {
        this.tell(handle);
      }
    }
  }

  grab(event, handle) {
    event.preventDefault();
    handle.grip.focus({ preventScroll: true });
    this.drawing.setPointerCapture(event.pointerId);
    const { corner, kind } = handle;
    const seconds = kind === "ramp" ? corner.reachedSeconds : corner.endSeconds;
    this.dragged = {
      handle,
      corner: { ...corner },
      x: event.clientX,
      y: event.clientY,
      offSeconds: this.seconds(event.clientX) - seconds,
      offCelsius: this.celsiusAt(event.clientY) - corner.targetCelsius,
      hold: minutesOf(this.said(corner).hold),
      late: corner.reachedSeconds - corner.fromSeconds - this.paper(corner),
      across: false,
      upright: false,
    };
    this.figure.classList.add("dragging");
  }

  /** A hand wavers: each direction counts only once it was meant. */
  drag(event) {
    const drag = this.dragged;
    const { handle, corner } = drag;
    drag.across ||= Math.abs(event.clientX - drag.x) > DEAD_PIXELS;
    drag.upright ||= Math.abs(event.clientY - drag.y) > DEAD_PIXELS;
    const seconds = this.seconds(event.clientX) - drag.offSeconds;
    const celsius = this.celsiusAt(event.clientY) - drag.offCelsius;
    if (drag.upright) {
      this.putTarget(corner, this.degrees(celsius, corner.unit));
    }
    if (drag.across && handle.kind === "hold") {
      this.putHold(corner, drag.hold + (seconds - corner.endSeconds) / 60);
    } else if (drag.across && this.rise(corner) >= 1) {
      const ramp = Math.max(60, seconds - corner.fromSeconds - drag.late);
      this.putRate(corner, (this.rise(corner) * HOUR) / ramp);
    }
    const target = numberOf(this.said(corner).target);
    this.place(
      handle,
      drag.across ? Math.max(corner.fromSeconds, seconds) : handle.kind === "ramp" ? corner.reachedSeconds : corner.endSeconds,
      target === undefined ? corner.targetCelsius : this.celsius(target, corner.unit),
    );
    this.tell(handle);
  }

  // ---- as a table, and as files

  columns() {
    const columns = new Map();
    for (const line of [...this.data.lines].reverse()) {
      columns.set(line.name, [...(columns.get(line.name) ?? []), line]);
    }
    return columns;
  }

  fillTable() {
    this.tableStale = false;
    const { band, lengthSeconds, brief } = this.data;
    const symbol = this.symbol();
    const columns = this.columns();
    const head = [this.byClock() ? WORDS.when : WORDS.after];
    if (band) {
      head.push(`${band.name}, ${symbol}`);
    }
    head.push(...[...columns.keys()].map((name) => `${name}, ${symbol}`));
    const step = nice(brief ? ROW_STEPS : ROW_STEPS.slice(6), lengthSeconds, MOST_ROWS);
    const rows = [];
    const times = this.rowTimes(step);
    times.forEach((at, i) => {
      const next = times[i + 1] ?? at + step;
      const row = [this.when(at)];
      if (band) {
        row.push(this.between(valueAt(band.seconds, band.lowCelsius, at) ?? 0, valueAt(band.seconds, band.highCelsius, at) ?? 0));
      }
      for (const lines of columns.values()) {
        if (lines[0].role === "readings") {
          row.push(
            lines[0].seconds
              .map((seconds, i) => ({ seconds, celsius: lines[0].celsius[i] }))
              .filter(({ seconds }) => seconds >= at && seconds < next)
              .map(({ seconds, celsius }) => `${this.number(celsius)} (${this.byClock() ? this.wall(seconds).clock : this.since(seconds)})`)
              .join(", "),
          );
        } else {
          const value = lines.map((line) => valueAt(line.seconds, line.celsius, at)).find((celsius) => celsius !== undefined);
          row.push(value === undefined ? "" : this.number(value));
        }
      }
      rows.push(row);
    });
    const table = this.figure.querySelector("details.values table");
    table.tHead.replaceChildren(element("tr", {}, ...head.map((words) => element("th", { scope: "col" }, words))));
    table.tBodies[0].replaceChildren(
      ...rows.map(([first, ...rest]) => element("tr", {}, element("th", { scope: "row" }, first), ...rest.map((words) => element("td", {}, words)))),
    );
  }

  /** The start, and round times after it: by the clock where that is shown. */
  rowTimes(step) {
    const { startMillis } = this.data.clock ?? {};
    const first = this.byClock() ? step - ((startMillis / 1000 + this.offset(0)) % step) : step;
    const times = [0];
    for (let at = first; at <= this.data.lengthSeconds; at += step) {
      times.push(at);
    }
    return times;
  }

  /** Every time at which any curve has a point, and what each is then. */
  csv() {
    const { band, lines, clock } = this.data;
    const ending = this.unit === "F" ? "_f" : "_c";
    const plain = (name) => name.toLowerCase().replace(/[^a-z0-9]+/g, "_").replace(/^_|_$/g, "") + ending;
    const times = new Set(band ? band.seconds : []);
    lines.forEach((line) => line.seconds.forEach((seconds) => times.add(seconds)));
    const columns = [...this.columns()];
    const head = ["time_s", ...(clock ? ["clock"] : []), ...(band ? ["low" + ending, "high" + ending] : []), ...columns.map(([, group]) => plain(this.short(group[0])))];
    const number = (celsius) => (celsius === undefined ? "" : (Math.round(this.degrees(celsius) * 10) / 10).toFixed(1));
    const rows = [...times]
      .sort((one, other) => one - other)
      .map((at) => [
        String(at),
        ...(clock ? [this.stamp(at)] : []),
        ...(band ? [number(valueAt(band.seconds, band.lowCelsius, at)), number(valueAt(band.seconds, band.highCelsius, at))] : []),
        ...columns.map(([, group]) => {
          if (group[0].role === "readings") {
            const i = group[0].seconds.indexOf(at);
            return i < 0 ? "" : number(group[0].celsius[i]);
          }
          return number(group.map((line) => valueAt(line.seconds, line.celsius, at)).find((celsius) => celsius !== undefined));
        }),
      ]);
    return [head, ...rows].map((row) => row.join(",")).join("\r\n") + "\r\n";
  }

  short(line) {
    return { display: this.data.brief ? line.name : "display", measured: "measured", readings: "read" }[line.role] ?? line.name;
  }

  /** Date, time and offset after ISO 8601. */
  stamp(seconds) {
    const offset = this.offset(seconds);
    const local = new Date(this.data.clock.startMillis + (seconds + offset) * 1000);
    const sign = offset < 0 ? "-" : "+";
    const zone = Math.abs(offset) / 60;
    return local.toISOString().slice(0, 19) + sign + two(Math.floor(zone / 60)) + ":" + two(zone % 60);
  }

  /** The drawing as a file of its own: what style sheets say stands in it. */
  svg() {
    const [left, right, above, below] = [70, 24, 52, 64];
    const keys = [...this.figure.querySelectorAll("ul.legend li")];
    const rows = Math.ceil(keys.length / 3);
    const height = FILE_HEIGHT + 24 * rows;
    const whole = shape("svg", { xmlns: SVG, width: FILE_WIDTH, height, viewBox: `0 0 ${FILE_WIDTH} ${height}`, role: "img", "aria-label": this.data.summary });
    const style = getComputedStyle(this.figure);
    const ink = style.color;
    const font = style.fontFamily;
    const sheet = getComputedStyle(this.figure.querySelector(".chart-frame")).backgroundColor;
    whole.append(shape("title", {}, this.data.name));
    whole.append(shape("rect", { width: FILE_WIDTH, height, fill: sheet }));
    whole.append(shape("text", { x: left, y: 30, fill: ink, "font-family": font, "font-size": 18, "font-weight": 600 }, this.data.name));
    const copy = this.styled(this.drawing);
    copy.querySelectorAll(".cursor, .marks, .knobs").forEach((node) => node.remove());
    for (const [key, value] of Object.entries({ x: left, y: above, width: FILE_WIDTH - left - right, height: FILE_HEIGHT - above - below })) {
      copy.setAttribute(key, value);
    }
    ["tabindex", "role", "aria-label", "aria-roledescription", "aria-describedby"].forEach((name) => copy.removeAttribute(name));
    copy.setAttribute("overflow", "visible");
    whole.append(copy);
    keys.forEach((key, i) => {
      const x = left + (i % 3) * 300;
      const y = FILE_HEIGHT + 24 * Math.floor(i / 3);
      const sample = this.styled(key.querySelector("svg"));
      sample.setAttribute("x", x);
      sample.setAttribute("y", y);
      sample.removeAttribute("aria-hidden");
      whole.append(sample, shape("text", { x: x + 42, y: y + 11, fill: ink, "font-family": font, "font-size": 13 }, key.textContent.trim()));
    });
    return new XMLSerializer().serializeToString(whole);
  }

  /** A copy that needs no style sheet. */
  styled(node) {
    const copy = node.cloneNode(true);
    const originals = [node, ...node.querySelectorAll("*")];
    const copies = [copy, ...copy.querySelectorAll("*")];
    const gone = [];
    originals.forEach((original, i) => {
      const style = getComputedStyle(original);
      const target = copies[i];
      if (style.visibility === "hidden") {
        gone.push(target);
      }
      const names = ["fill", "stroke", "stroke-width", "stroke-dasharray", "stroke-linecap", "vector-effect", "paint-order"];
      if (["text", "tspan"].includes(original.localName)) {
        names.push("font-family", "font-size", "font-weight");
      }
      if (["path", "line", "rect", "circle", "text", "tspan"].includes(original.localName)) {
        for (const name of names) {
          const value = style.getPropertyValue(name);
          if (value && !(name === "fill" && original.getAttribute("fill")?.startsWith("url("))) {
            target.setAttribute(name, value);
          }
        }
      }
      target.removeAttribute("class");
      if (["cursor", "marks", "knobs"].some((name) => original.classList.contains(name))) {
        target.setAttribute("class", original.getAttribute("class"));
      }
    });
    gone.forEach((target) => target.remove());
    return copy;
  }

  async takeAs(kind) {
    const name = this.data.name.replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "") + "." + kind;
    if (kind === "csv") {
      this.save(name, new Blob([this.csv()], { type: "text/csv;charset=utf-8" }));
    } else if (kind === "svg") {
      this.save(name, new Blob([this.svg()], { type: "image/svg+xml" }));
    } else {
      this.save(name, await this.png());
    }
  }

  async png() {
    const picture = new Image();
    picture.src = "data:image/svg+xml;charset=utf-8," + encodeURIComponent(this.svg());
    await picture.decode();
    const canvas = document.createElement("canvas");
    canvas.width = 2 * picture.width;
    canvas.height = 2 * picture.height;
    canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
    return new Promise((done) => canvas.toBlob(done, "image/png"));
  }

  save(name, blob) {
    const link = element("a", { href: URL.createObjectURL(blob), download: name });
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  }
}

takeAll();
