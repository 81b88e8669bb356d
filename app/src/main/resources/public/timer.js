// The piece timer. The bench has followed the piece and says what is so from when on; here it is only
// looked up, told, and kept until the bench takes it. A reload, a lost network or a shut browser lose
// nothing: the press on the door is kept before anything else.

const $ = (id) => document.getElementById(id);
const data = JSON.parse($("timer-data").textContent);
const TICK_MILLIS = 200;
const SEND_AGAIN_MILLIS = 15_000;
const BOUNCE_MILLIS = 1200; // a knuckle that slips is one press
const SOUND = "heatwright timer sound";
const KEPT = "heatwright timer " + data.key;

const memory = read(KEPT) ?? {};
let shut = memory.shut ?? 0; // when the door shut behind the piece that is in, ms; 0: none is
let pieces = merged(memory.pieces ?? [], data.pieces);
let queue = memory.queue ?? [];
let sound = read(SOUND) !== false;
let audio = null;
let sounded = -1;
let shown = "";
let pressed = 0;
let sending = false;

$("door").addEventListener("click", door);
$("drop").addEventListener("click", () => out(false));
$("sound").addEventListener("click", () => {
  sound = !sound;
  write(SOUND, sound);
  drawSound();
  if (sound) {
    tone("soon");
  }
});
$("pieces").addEventListener("click", takeBack);
window.addEventListener("online", send);
setInterval(tick, TICK_MILLIS);
setInterval(send, SEND_AGAIN_MILLIS);
drawSound();
drawPieces();
if (shut) {
  sounded = seconds(); // what was to be heard before a reload is past
}
tick();
send();

// ---- the door

function door() {
  const now = Date.now();
  if (now - pressed < BOUNCE_MILLIS) {
    return;
  }
  pressed = now;
  wakeSound();
  if (shut) {
    out(true);
  } else {
    shut = now;
    sounded = -1;
    keep();
    tick();
  }
}

function out(counts) {
  if (counts) {
    const piece = { at: shut, seconds: Math.max(1, Math.round(seconds())) };
    pieces.push(piece);
    if (data.firing) {
      queue.push(piece);
    }
  }
  shut = 0;
  keep();
  drawPieces();
  tick();
  send();
}

function seconds() {
  return (Date.now() - shut) / 1000;
}

// ---- what is so now

function tick() {
  const running = shut > 0;
  const s = running ? Math.max(0, seconds()) : 0;
  const stage = running ? data.stages.filter((stage) => stage.fromSeconds <= s).at(-1) : null;
  const look = stage ? stage.look : "idle";
  text("seconds", running ? String(Math.floor(s)) : String(pieces.filter((p) => !p.gone).at(-1)?.seconds ?? 0));
  text("door", running ? $("door").dataset.out : $("door").dataset.in);
  text("stage", stage ? stage.head : "");
  text("says-stage", stage ? stage.says : $("says-stage").dataset.idle);
  text("ought", running ? ought(s) : first());
  const next = running ? data.stages.find((other) => other.fromSeconds > s && other.coming) : null;
  text("coming-stage", next ? next.coming.replace("{s}", String(Math.ceil(next.fromSeconds - s))) : "");
  $("drop").hidden = !running;
  const here = $("ticking");
  if (here.dataset.stage !== look) {
    here.dataset.stage = look;
  }
  if (running) {
    sounds(s);
  }
}

/** What the piece should be: straight lines between the rows that the bench gave. */
function ought(s) {
  const low = at(data.curve.low, s);
  return low === null
    ? $("ought").dataset.beyond
    : filled($("ought").dataset.now, low, at(data.curve.high, s)).replace("{s}", Math.floor(s));
}

function first() {
  const look = data.stages.find((stage) => stage.look !== "wait");
  const low = look ? at(data.curve.low, look.fromSeconds) : null;
  return low === null
    ? ""
    : filled($("ought").dataset.after, low, at(data.curve.high, look.fromSeconds)).replace("{s}", look.fromSeconds);
}

function filled(words, low, high) {
  return words.replace("{low}", Math.round(low)).replace("{high}", `${Math.round(high)} ${data.unit}`);
}

function at(column, s) {
  const times = data.curve.seconds;
  const after = times.findIndex((time) => time >= s);
  if (after < 0) {
    return null;
  }
  if (after === 0) {
    return column[0];
  }
  const share = (s - times[after - 1]) / (times[after] - times[after - 1]);
  return column[after - 1] + share * (column[after] - column[after - 1]);
}

// ---- to be heard, felt and seen

/** The newest that is due since the last look; a sleeping page does not make up for what it missed. */
function sounds(s) {
  const due = data.sounds.filter((one) => one.atSeconds > sounded && one.atSeconds <= s).at(-1);
  const last = data.sounds.at(-1);
  const over = data.stages.filter((stage) => stage.fromSeconds <= s).at(-1)?.look === "over";
  const again = over && last && s - Math.max(sounded, last.atSeconds) >= data.repeatSeconds;
  if (due || again) {
    sounded = s;
    strike(due ? due.kind : "over");
  }
}

function strike(kind) {
  if (shown) {
    clearTimeout(shown);
  }
  $("ticking").classList.add("struck");
  shown = setTimeout(() => $("ticking").classList.remove("struck"), 1900);
  document.dispatchEvent(new CustomEvent("struck", { detail: kind }));
  navigator.vibrate?.({ soon: [120], look: [250, 120, 250], out: [500, 150, 500], over: [700, 150, 700, 150, 700] }[kind]);
  if (sound) {
    tone(kind);
  }
}

/** Browsers sound only after a press: this is called in one. */
function wakeSound() {
  try {
    audio ??= new AudioContext();
    audio.resume();
  } catch {
    audio = null; // no sound on this machine; colour, words and vibration stay
  }
}

function tone(kind) {
  wakeSound();
  if (!audio) {
    return;
  }
  const [hertz, long, times] = { soon: [660, 0.12, 1], look: [880, 0.16, 2], out: [990, 0.4, 3], over: [1320, 0.25, 5] }[kind];
  for (let i = 0; i < times; i++) {
    const from = audio.currentTime + 0.02 + i * (long + 0.12);
    const wave = new OscillatorNode(audio, { type: "triangle", frequency: hertz });
    const volume = new GainNode(audio, { gain: 0 });
    volume.gain.setValueAtTime(0, from);
    volume.gain.linearRampToValueAtTime(0.6, from + 0.015);
    volume.gain.setValueAtTime(0.6, from + long - 0.03);
    volume.gain.linearRampToValueAtTime(0, from + long);
    wave.connect(volume).connect(audio.destination);
    wave.start(from);
    wave.stop(from + long);
  }
}

function drawSound() {
  $("sound").setAttribute("aria-checked", String(sound));
}

// ---- pieces

function takeBack(event) {
  const piece = pieces.find((p) => String(p.at) === event.target.dataset?.at);
  if (piece) {
    piece.gone = !piece.gone;
    if (data.firing) {
      queue.push({ at: piece.at, seconds: piece.seconds, back: piece.gone });
    }
    keep();
    drawPieces();
    send();
  }
}

function drawPieces() {
  const words = $("pieces").dataset;
  const focused = document.activeElement?.dataset?.at;
  const lines = pieces.map((piece, i) => {
    const line = document.createElement("li");
    const told = document.createElement("span");
    told.className = piece.gone ? "gone" : "";
    told.textContent = words.words.replace("{n}", i + 1).replace("{s}", piece.seconds);
    const waits = document.createElement("span");
    waits.className = "waiting";
    waits.textContent = queue.some((q) => q.at === piece.at) ? words.waiting : "";
    const back = document.createElement("button");
    back.type = "button";
    back.className = "quiet";
    back.dataset.at = piece.at;
    back.textContent = piece.gone ? words.again : words.back;
    back.setAttribute("aria-label", `${told.textContent}, ${back.textContent}`);
    line.append(told, waits, back);
    return line;
  });
  $("pieces").replaceChildren(...lines.reverse());
  if (focused) {
    document.querySelector(`[data-at="${focused}"]`)?.focus();
  }
  const done = pieces.filter((p) => !p.gone).length;
  text("count", `${done} / ${data.planned}`);
}

/** One after the other, so that what was taken back is taken back after it was told. */
async function send() {
  if (sending || queue.length === 0) {
    return;
  }
  sending = true;
  try {
    while (queue.length > 0) {
      const [piece] = queue;
      const body = new URLSearchParams({ at: piece.at, seconds: piece.seconds });
      if (piece.back) {
        body.set("back", "1");
      }
      const response = await fetch("/timer/piece?firing=" + encodeURIComponent(data.firing), { method: "POST", body });
      if (response.status >= 500) {
        break;
      }
      if (response.status === 422) {
        text("piece-error", (await response.json()).error);
      } else {
        text("piece-error", "");
      }
      queue.shift();
      keep();
    }
  } catch {
    // The bench does not answer: they wait here.
  }
  sending = false;
  drawPieces();
}

/**
 * What the book has and what is kept here, each once, by when the door shut. The book knows best, but
 * for what it has not been told yet, and for what a page from before the network was lost cannot know.
 */
function merged(here, there) {
  const all = new Map(there.map((piece) => [piece.at, piece]));
  const old = !data.firing || document.querySelector(".as-of") !== null;
  const untold = new Set((memory.queue ?? []).map((piece) => piece.at));
  here
    .filter((piece) => old || piece.gone || untold.has(piece.at) || all.has(piece.at))
    .forEach((piece) => all.set(piece.at, untold.has(piece.at) || old ? piece : { ...piece, gone: !all.has(piece.at) }));
  return [...all.values()].sort((a, b) => a.at - b.at);
}

// ---- keeping

function keep() {
  write(KEPT, { shut, pieces, queue });
}

function read(name) {
  try {
    return JSON.parse(localStorage.getItem(name));
  } catch {
    return null;
  }
}

function write(name, value) {
  try {
    localStorage.setItem(name, JSON.stringify(value));
  } catch {
    // No memory is allowed here: it works until the page is left.
  }
}

function text(id, words) {
  if ($(id).textContent !== words) {
    $(id).textContent = words;
  }
}
