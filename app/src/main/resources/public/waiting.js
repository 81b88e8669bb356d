// Looks again and again how far something is, and goes where it leads once it is there.

import { say } from "./say.js";

const LOOK_AGAIN_MILLIS = 600;

setTimeout(look, LOOK_AGAIN_MILLIS);

async function look() {
  try {
    const response = await fetch(location.pathname, { headers: { Accept: "text/html" }, redirect: "manual" });
    if (response.type === "opaqueredirect") {
      location.reload(); // there: the browser follows by itself, to its part of the page, too
      return;
    }
    const there = new DOMParser().parseFromString(await response.text(), "text/html");
    const fresh = there.getElementById("progress");
    if (!fresh) {
      location.reload();
      return;
    }
    const here = document.getElementById("progress");
    for (const [i, line] of [...fresh.children].entries()) {
      if (here.children[i].textContent !== line.textContent) {
        here.children[i].textContent = line.textContent;
      }
    }
    document.getElementById("alarm").textContent = "";
  } catch {
    document.getElementById("alarm").textContent = say("The bench does not answer; it is asked again.");
  }
  setTimeout(look, LOOK_AGAIN_MILLIS);
}
