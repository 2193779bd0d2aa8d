// Keeps the page usable without a network: the network is asked first, so that an edited page is seen at once; where
// it fails or dawdles, the kept copy answers.

const STORE = "brew-ticket";
const PATIENCE_MS = 2500;
const FILES = [
  "./",
  "index.html",
  "manifest.webmanifest",
  "icon.svg",
  "theme.css",
  "page.css",
  "calculator.css",
  "print.css",
  "words.en.js",
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
  "cupwright/cupwright.wasm",
  "cupwright/src/slim.js",
  "cupwright/src/all.js",
  "cupwright/src/call.js",
  "cupwright/src/functions.js",
  "cupwright/src/about.js",
];

self.addEventListener("install", (event) => {
  event.waitUntil(
    caches
      .open(STORE)
      .then((store) => store.addAll(FILES.map((file) => new Request(file, { cache: "reload" }))))
      .then(() => self.skipWaiting()),
  );
});

self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && new URL(request.url).origin === self.location.origin) {
    event.respondWith(answer(request));
  }
});

async function answer(request) {
  const store = await caches.open(STORE);
  const kept = await store.match(request, { ignoreSearch: true });
  const fresh = fetch(request).then(async (response) => {
    if (response.ok && kept) await store.put(request, response.clone());
    return response;
  });
  if (!kept) return fresh;
  const tooLong = new Promise((settle) => setTimeout(settle, PATIENCE_MS, kept));
  return Promise.race([fresh.catch(() => kept), tooLong]);
}
