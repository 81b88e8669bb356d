// Keeps the pages that are needed at the kiln, so that they stay usable when the network drops. The
// network always comes first: what was kept is shown only when the bench does not answer, and says so.
// Answers to anything sent are never kept.

const BENCH = "__BENCH__";
const SHELL = "heatwright-shell-" + BENCH.version;
const PAGES = "heatwright-pages-" + BENCH.version;
const KEPT_AT = "heatwright-kept-at";
const LOST_AFTER_MILLIS = 12_000; // a plan may take a few seconds to work out
const SHELL_LOST_AFTER_MILLIS = 4000;

/** Which pages are kept, and how many of each: the ones looked at last. */
const KEPT = new Map([
  ["/", 1],
  ["/plan", 4],
  ["/rehearse", 4],
  ["/readback", 4],
  ["/timer", 4],
]);

self.addEventListener("install", (event) => {
  self.skipWaiting();
  event.waitUntil(caches.open(SHELL).then((cache) => cache.addAll(BENCH.shell)));
});

self.addEventListener("activate", (event) => {
  event.waitUntil(
    (async () => {
      for (const name of await caches.keys()) {
        if (name.startsWith("heatwright-") && name !== SHELL && name !== PAGES) {
          await caches.delete(name);
        }
      }
      await self.clients.claim();
    })(),
  );
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (address.origin !== location.origin) {
    return;
  }
  if (request.method !== "GET") {
    if (request.mode === "navigate") {
      event.respondWith(fetch(request).catch(() => instead("data-not-sent")));
    }
    return;
  }
  if (request.mode === "navigate") {
    event.respondWith(page(event, address));
  } else if (address.pathname === "/" && address.search === "") {
    event.respondWith(looked(event, address)); // Now looks again by itself
  } else if (BENCH.shell.includes(address.pathname)) {
    event.respondWith(part(request, address));
  }
});

/** A page tells what else is needed at the kiln, before the network is lost. */
self.addEventListener("message", (event) => {
  for (const told of event.data?.keep ?? []) {
    const address = new URL(told, location.origin);
    if (address.origin === location.origin && kept(address)) {
      event.waitUntil(fetchAndKeep(address));
    }
  }
});

function kept(address) {
  return KEPT.has(address.pathname) && (address.pathname !== "/" || address.search === "");
}

function nameOf(address) {
  return address.pathname + address.search;
}

async function page(event, address) {
  let answer;
  try {
    answer = await inTime(fetch(event.request), kept(address) ? LOST_AFTER_MILLIS : 0);
  } catch {
    return (kept(address) && (await asKept(address))) || instead("");
  }
  if (kept(address)) {
    event.waitUntil(keep(address, answer.clone()));
  }
  return answer;
}

async function looked(event, address) {
  const answer = await fetch(event.request);
  event.waitUntil(keep(address, answer.clone()));
  return answer;
}

/** A style, a script, a picture: the bench's own, or as it was when this worker came. */
async function part(request, address) {
  try {
    const answer = await inTime(fetch(request), SHELL_LOST_AFTER_MILLIS);
    if (answer.ok && address.pathname.startsWith("/languages/")) {
      const copy = answer.clone(); // another language may have been chosen since
      caches.open(SHELL).then((cache) => cache.put(address.pathname, copy));
    }
    return answer;
  } catch (failure) {
    const here = await caches.open(SHELL).then((cache) => cache.match(address.pathname));
    if (here) {
      return here;
    }
    throw failure;
  }
}

function inTime(answer, millis) {
  return millis === 0
    ? answer
    : Promise.race([
        answer,
        new Promise((_, lost) => setTimeout(() => lost(new Error("The bench does not answer.")), millis)),
      ]);
}

async function fetchAndKeep(address) {
  const cache = await caches.open(PAGES);
  if (await cache.match(nameOf(address))) {
    return;
  }
  try {
    await keep(address, await fetch(nameOf(address), { credentials: "same-origin" }));
  } catch {
    // It will be kept when it is looked at.
  }
}

async function keep(address, answer) {
  if (!answer.ok || answer.redirected || !(answer.headers.get("Content-Type") ?? "").startsWith("text/html")) {
    return;
  }
  const headers = new Headers(answer.headers);
  headers.set(KEPT_AT, String(Date.now()));
  const cache = await caches.open(PAGES);
  await cache.delete(nameOf(address));
  await cache.put(nameOf(address), new Response(await answer.blob(), { headers }));
  const alike = (await cache.keys()).filter((other) => new URL(other.url).pathname === address.pathname);
  for (const old of alike.slice(0, Math.max(0, alike.length - KEPT.get(address.pathname)))) {
    await cache.delete(old);
  }
}

/** The page as it was, with the time it was so at its head. */
async function asKept(address) {
  const answer = await caches.open(PAGES).then((cache) => cache.match(nameOf(address)));
  if (!answer) {
    return null;
  }
  return told(answer, "data-as-of");
}

/** Where nothing was kept: what was kept otherwise. */
async function instead(words) {
  const answer = await caches.open(SHELL).then((cache) => cache.match("/offline"));
  return answer ? told(answer, words) : Response.error();
}

/** A kept page with a line at its head: the page has the words for it, in its own language. */
async function told(answer, attribute) {
  const html = await answer.text();
  const words = attribute ? new RegExp(`<body[^>]*${attribute}="([^"]*)"`).exec(html)?.[1] : "";
  const at = new Date(Number(answer.headers.get(KEPT_AT)));
  const today = at.toDateString() === new Date().toDateString();
  const time = at.toLocaleString(/<html lang="([^"]+)"/.exec(html)?.[1] ?? "en", {
    ...(today ? {} : { weekday: "short", day: "numeric", month: "short" }),
    hour: "2-digit",
    minute: "2-digit",
    hourCycle: "h23",
  });
  const line = words ? `<p class="as-of" role="status">${words.replace("{time}", time)}</p>` : "";
  const headers = new Headers(answer.headers);
  headers.delete("Content-Length");
  headers.delete("Content-Encoding");
  return new Response(html.replace(/<body[^>]*>/, (body) => body + "\n" + line), { headers });
}
