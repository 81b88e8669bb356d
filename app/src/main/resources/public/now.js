// Looks again every half minute at what is hot, unless somebody is typing there. Everything works without
// it.

import { say } from "./say.js";

const LOOK_AGAIN_MILLIS = 30_000;

document.documentElement.classList.add("scripted");
setInterval(lookAgain, LOOK_AGAIN_MILLIS);
document.addEventListener("visibilitychange", () => {
  if (document.visibilityState === "visible") {
    lookAgain();
  }
});

async function lookAgain() {
  if (document.visibilityState !== "visible" || !document.getElementById("hot") || typing()) {
    return;
  }
  try {
    const response = await fetch(location.pathname, { headers: { Accept: "text/html" } });
    if (!response.ok || typing()) {
      return;
    }
    const fresh = new DOMParser().parseFromString(await response.text(), "text/html");
    if (fresh.querySelector("[data-later]")) {
      return; // it is there at the next look
    }
    for (const part of ["#hot", ".headline", ".clock"]) {
      const here = document.querySelector(part);
      const there = fresh.querySelector(part);
      if (here && there && here.innerHTML !== there.innerHTML) {
        here.innerHTML = there.innerHTML;
      }
    }
    document.title = fresh.title;
    alarm("");
  } catch {
    alarm(say("The bench does not answer; what stands here is as old as the clock above says."));
  }
}

/** Somebody has a field in hand, has typed something that was not sent, or has opened something. */
function typing() {
  const here = document.activeElement?.closest("#hot form");
  const begun = [...document.querySelectorAll("#hot input")].some(
    (field) => field.value !== field.defaultValue,
  );
  return Boolean(here) || begun || document.querySelector("#hot details[open]") !== null;
}

function alarm(sentence) {
  document.getElementById("alarm").textContent = sentence;
}
