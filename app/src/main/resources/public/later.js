// Parts of a page that are still being worked out come by themselves; nothing else on the page is touched.

const FIRST_LOOK_MILLIS = 700;
const SLOWEST_LOOK_MILLIS = 5000;

look(FIRST_LOOK_MILLIS);

function look(after) {
  setTimeout(async () => {
    const waiting = [...document.querySelectorAll("[data-later]")];
    if (waiting.length === 0) {
      return;
    }
    try {
      const response = await fetch(location.href, { headers: { Accept: "text/html" } });
      if (response.ok) {
        const there = new DOMParser().parseFromString(await response.text(), "text/html");
        for (const section of waiting) {
          await take(section, there.getElementById(section.id));
        }
      }
    } catch {
      // The bench does not answer: it is asked again.
    }
    look(Math.min(1.5 * after, SLOWEST_LOOK_MILLIS));
  }, after);
}

async function take(section, fresh) {
  if (fresh?.hasAttribute("data-later")) {
    return;
  }
  if (!fresh) {
    section.remove();
    return;
  }
  const come = document.importNode(fresh, true);
  section.replaceWith(come);
  if (come.querySelector("figure.curves")) {
    const { takeAll } = await import("./curves.js");
    takeAll(come);
  }
}
