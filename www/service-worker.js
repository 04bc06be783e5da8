// Keeps the page on the device, so that it starts without a network. `cargo xtask build` fills in the two constants
// (crates/xtask/src/offline.rs) and puts the result into dist/.

const DIGEST = "";
const FILES = [];

// The address of the page itself; everything else lies below it. Other pages of the same host have caches as well.
const PAGE = new URL("./", location).href;
const PREFIX = `coatwright ${PAGE} `;
const NAME = PREFIX + DIGEST;

// All of one version or nothing: a file that is missing or is not the one that was built fails the whole. The cache of
// the network is passed by, for it may hold a file of the version before under the same name.
async function keep() {
  const wanted = FILES.map(([file, integrity]) => new Request(file, { cache: "reload", integrity }));
  await (await caches.open(NAME)).addAll(wanted);
}

// What is left of older versions goes, and a page that was loaded before there was a worker is looked after too.
async function clear() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(PREFIX) && name !== NAME);
  await Promise.all(old.map((name) => caches.delete(name)));
  await clients.claim();
}

async function answer(request, address) {
  const cache = await caches.open(NAME);
  return (await cache.match(address, { ignoreVary: true })) ?? fetch(request);
}

addEventListener("install", (event) => event.waitUntil(keep()));
addEventListener("activate", (event) => event.waitUntil(clear()));

// A new version waits until nobody has the old one open, or until the maker says so on the page.
addEventListener("message", (event) => {
  if (event.data === "take") skipWaiting();
});

addEventListener("fetch", (event) => {
  const { request } = event;
  const address = request.url.split(/[?#]/)[0];
  if (request.method !== "GET" || !address.startsWith(PAGE)) return;
  if (request.mode === "navigate") {
    // Whoever asks for another address wants that, and not the page.
    if (address === PAGE || address === `${PAGE}index.html`) event.respondWith(answer(request, PAGE));
  } else {
    event.respondWith(answer(request, address));
  }
});
