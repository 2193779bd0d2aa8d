// Keeps the page usable without a network: when it is opened the network is asked first, so that an edited page is seen
// at once; where that fails or dawdles, the page as it was kept answers.

// Other pages of this address may have stores too, other copies of this one among them. No address has a space in it.
const OWN = `brew-ticket ${self.registration.scope} `;
const PATIENCE_MS = 2500;
const WORKER = "service-worker.js";
// Put into a store when all others are there.
const LAST = "./";
const FILES = [
  "./",
  "index.html",
  WORKER,
  "manifest.webmanifest",
  "icon.svg",
  "theme.css",
  "page.css",
  "calculator.css",
  "print.css",
  "words.en.js",
  "invented-brew.csv",
  "record.md",
  "src/main.js",
  "src/calculator.js",
  "src/element.js",
  "src/fields.js",
  "src/presets.js",
  "src/settings.js",
  "src/link.js",
  "src/units.js",
  "src/refusals.js",
  "src/form.js",
  "src/shelf-view.js",
  "src/bench.js",
  "src/recipe-view.js",
  "src/cautions.js",
  "src/guide.js",
  "src/guide-view.js",
  "src/judge-view.js",
  "src/pictures.js",
  "src/notebook.js",
  "src/notebook-view.js",
  "src/exchange.js",
  "src/download.js",
  "src/learnt.js",
  "src/learn-view.js",
  "src/replay.js",
  "src/replay-view.js",
  "cupwright/cupwright.wasm",
  "cupwright/src/slim.js",
  "cupwright/src/all.js",
  "cupwright/src/call.js",
  "cupwright/src/functions.js",
  "cupwright/src/columns.js",
  "cupwright/src/live.js",
  "cupwright/src/about.js",
];

// A release is a store named by what is in it. The newest whole one is served, never a mixture of two.
async function releases() {
  const names = (await caches.keys()).filter((name) => name.startsWith(OWN));
  const whole = await Promise.all(names.map((name) => inRelease(name, LAST)));
  return names.filter((_, index) => whole[index]);
}

const newest = async () => (await releases()).at(-1);

// Files are kept by their names alone. A release that is gone has none.
const inRelease = (cacheName, request) => caches.match(request, { cacheName, ignoreSearch: true, ignoreVary: true });

// The worker that is on and one that is being installed fill and tidy in turn.
const inTurn = (work) => navigator.locks.request(OWN, work);

// What each page was opened from. A worker that was put to sleep in between goes on with the newest.
const openedFrom = new Map();

let running = null;
/** Fetches all files, or fails; those that are new become a release. Gives its name. Once at a time. */
const renewed = (installs = false) => (running ??= renew(installs).finally(() => (running = null)));

async function renew(installs) {
  try {
    const responses = await Promise.all(FILES.map(fetched));
    return await inTurn(() => released(responses, installs));
  } finally {
    await inTurn(tidy);
  }
}

async function fetched(file) {
  const response = await fetch(new Request(file, { cache: "no-cache" }));
  if (!response.ok) throw new Error(`${response.url}: ${response.status}`);
  // No page may be opened from a response that was redirected, but from a copy.
  return response.redirected ? new Response(await response.blob(), { headers: response.headers }) : response;
}

async function released(responses, installs) {
  const kept = await newest();
  const of = (file) => responses[FILES.indexOf(file)];
  // Another worker may have another list of files: it makes the release as it is installed.
  if (kept && !installs && (await (await inRelease(kept, WORKER)).text()) !== (await of(WORKER).clone().text())) {
    self.registration.update().catch(() => {});
    return kept;
  }
  const name = OWN + (await digest(responses));
  if (name === kept) return name;
  await caches.delete(name);
  const store = await caches.open(name);
  const put = (file) => store.put(file, of(file));
  await Promise.all(FILES.filter((file) => file !== LAST).map(put));
  await put(LAST);
  return name;
}

async function digest(responses) {
  const bodies = await Promise.all(responses.map((response) => response.clone().blob()));
  const lengths = bodies.map(({ size }) => size).join();
  const bytes = await new Blob([lengths, ...bodies]).arrayBuffer();
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(hash.subarray(0, 8), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Leaves the newest release and the one before it, which an open page may still ask for. */
async function tidy() {
  const keep = (await releases()).slice(-2);
  const old = (await caches.keys()).filter((name) => name.startsWith(OWN) && !keep.includes(name));
  await Promise.all(old.map((name) => caches.delete(name)));
}

self.addEventListener("install", (event) => event.waitUntil(renewed(true).then(() => self.skipWaiting())));

self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(request.mode === "navigate" ? opened(event) : answer(event));
});

/** A page as it is now, or as it was kept where the network fails or dawdles. */
async function opened(event) {
  const kept = await newest();
  const fresh = renewed().catch(() => kept);
  event.waitUntil(fresh);
  const patience = new Promise((settle) => setTimeout(settle, PATIENCE_MS, kept));
  const name = await Promise.race([fresh, patience]);
  openedFrom.set(event.resultingClientId, name);
  return answer(event, name);
}

async function answer({ request, clientId }, name = openedFrom.get(clientId)) {
  const release = name ?? (await newest());
  return (release && (await inRelease(release, request))) ?? fetch(request);
}
