// The slider asks for the cut mould at its minute; without this script the form's button does.
import { say } from "./say.js";

const form = document.getElementById("look-inside");
const slide = document.getElementById("slide");
const cut = document.getElementById("cut");
const moment = document.getElementById("moment");
const alarm = document.getElementById("alarm");

let waiting = 0;
let asked = null;

async function show() {
  asked?.abort();
  const mine = new AbortController();
  asked = mine;
  try {
    const query = new URLSearchParams(new FormData(form));
    const answer = await fetch("/inside/section?" + query, { signal: mine.signal });
    if (!answer.ok) {
      throw new Error(String(answer.status));
    }
    const drawn = new DOMParser().parseFromString(await answer.text(), "text/html").querySelector("svg");
    cut.replaceChildren(drawn);
    const title = drawn.querySelector("title").textContent;
    const at = ` ${say("at")} `;
    moment.textContent = title.slice(title.indexOf(at) + at.length);
    slide.setAttribute("aria-valuetext", moment.textContent);
    alarm.textContent = "";
  } catch (problem) {
    if (problem.name !== "AbortError") {
      alarm.textContent = say("That moment could not be drawn; is the bench still running?");
    }
  }
}

if (form && slide) {
  slide.setAttribute("aria-valuetext", moment.textContent);
  slide.addEventListener("input", () => {
    clearTimeout(waiting);
    waiting = setTimeout(show, 120);
  });
}
