// Lists what this browser kept of the bench, the newest first, and goes on as soon as the bench answers.

import { onceItAnswers } from "/again.js";

// What was asked for is asked for again; what was sent is not: keep.js leads back to it.
if (!document.querySelector(".as-of")) {
  onceItAnswers(() => (location.pathname === "/offline" ? location.assign("/") : location.reload()));
}

const list = document.getElementById("kept-pages");
for (const name of await caches.keys()) {
  if (!name.startsWith("heatwright-pages-")) {
    continue;
  }
  const cache = await caches.open(name);
  for (const request of (await cache.keys()).reverse()) {
    const answer = await cache.match(request);
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const link = document.createElement("a");
    link.href = request.url;
    link.textContent = page.title.replace(" · Heatwright", "");
    const when = document.createElement("span");
    when.textContent = new Date(Number(answer.headers.get("heatwright-kept-at"))).toLocaleString([], {
      weekday: "short",
      hour: "2-digit",
      minute: "2-digit",
      hourCycle: "h23",
    });
    const line = document.createElement("li");
    line.append(link, when);
    list.append(line);
    document.getElementById("kept-nothing").hidden = true;
  }
}
