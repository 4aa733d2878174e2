// Keeps the whole page on the device. `cargo xtask bundle` fills in the two values below.
const VERSION = "unbundled";
const FILES = [];

// Caches are shared by all pages of an origin, so the name says whose they are.
const OURS = `heapwright ${self.registration.scope} `;
const CACHE = OURS + VERSION;
const INDEX = new URL("./", self.registration.scope).href;
const HAS_CONTENT_HASH = /-[0-9a-f]{16}\.\w+$/;
// Longest that a version that waits may take to say its name [ms]; it may have to be started for it.
const MOST_WAIT_MS = 1500;

// Whose files answer: those of the next version from when it was told to take over until it has.
let answering = CACHE;
// The asking whether the next version can take over, once it has begun.
let handing;

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(takeOver()));
self.addEventListener("message", (event) => {
  if (event.data === "take over") self.skipWaiting();
  if (event.data === "say your name") event.ports[0]?.postMessage(CACHE);
  if (event.data.reminders) event.waitUntil(oneByOne(() => remindOf(event.data.reminders)));
});
// Where the browser lets an installed page do so, it comes about twice a day, also while the page is closed.
self.addEventListener("periodicsync", (event) => {
  if (event.tag === "reminders") event.waitUntil(oneByOne(remindDue));
});
self.addEventListener("notificationclick", (event) => event.waitUntil(openToday(event.notification)));
self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || !request.url.startsWith(INDEX)) return;
  if (request.mode === "navigate" && isPlace(request.url)) event.respondWith(index(request));
  else event.respondWith(file(request));
});

// All or nothing: a version that could not be fetched whole is not installed.
async function install() {
  const cache = await caches.open(CACHE);
  await Promise.all(FILES.map(async (name) => {
    const url = new URL(name, INDEX).href;
    const known = HAS_CONTENT_HASH.test(name) ? await caches.match(url) : undefined;
    const response = known ?? await fetch(url, { cache: HAS_CONTENT_HASH.test(name) ? "default" : "reload" });
    if (!response.ok) throw new Error(`${name}: ${response.status}`);
    await cache.put(url, response);
  }));
}

async function takeOver() {
  for (const name of await caches.keys()) {
    if (name.startsWith(OURS) && name !== CACHE) await caches.delete(name);
  }
  await self.clients.claim();
}

// A page that closes may leave its worker busy for a moment. The browser would keep the old version for a page that opens
// just then: where no other is open, the next version takes over all the same, and its files answer from here on.
async function handOver() {
  if (!self.registration.waiting) return;
  if ((await self.clients.matchAll({ includeUncontrolled: true })).length > 0) return;
  handing ??= askNext(self.registration.waiting);
  await handing;
}

async function askNext(next) {
  const name = await new Promise((told) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => told(data);
    setTimeout(told, MOST_WAIT_MS);
    next?.postMessage("say your name", [port2]);
  });
  if (!name || !(await caches.match(INDEX, { cacheName: name }))) return;
  answering = name;
  next.postMessage("take over");
}

// What is kept. A cache is not opened for it: that would bring back one that the next version has just deleted.
const keptOf = (request) => caches.match(request, { cacheName: answering });

// A place inside the page rather than a file: the last segment has no dot.
function isPlace(url) {
  const last = new URL(url).pathname.split("/").pop();
  return !last.includes(".") || last === "index.html";
}

// The index as it must be at this depth: references that begin with "./" are pointed upward, as the server does.
async function index(request) {
  await handOver();
  const found = await keptOf(INDEX);
  if (!found) return fetch(request);
  const depth = new URL(request.url).pathname.slice(new URL(INDEX).pathname.length).split("/").length - 1;
  if (depth === 0) return found;
  const headers = new Headers(found.headers);
  for (const name of ["content-encoding", "content-length", "etag"]) headers.delete(name);
  const text = await found.text();
  return new Response(text.replaceAll('="./', `="${"../".repeat(depth)}`), { headers });
}

// Only some look around in the demo garden: it is kept when it was used.
const KEPT_WHEN_USED = /\/demo\.jsonl$/;

async function file(request) {
  const found = await keptOf(request);
  if (found) return found;
  const response = await fetch(request);
  if (response.ok && KEPT_WHEN_USED.test(new URL(request.url).pathname) && await caches.has(answering)) {
    await (await caches.open(answering)).put(request, response.clone());
  }
  return response;
}

// What has a day, as the page last worked it out: name, at, title, body of each, and whether it was shown. A cache, for this
// is the only one who writes it; not one of those that a new version clears.
const REMINDERS = `reminders of heapwright ${self.registration.scope}`;
const LIST = new URL("reminders.json", INDEX).href;

// Two that come at once must not both show what is due.
let before = Promise.resolve();
function oneByOne(work) {
  before = before.then(work, work);
  return before;
}

const kept = async () => (await (await caches.match(LIST, { cacheName: REMINDERS }))?.json()) ?? [];
const keep = async (list) => (await caches.open(REMINDERS)).put(LIST, new Response(JSON.stringify(list)));

// A reminder of a day: what is due at a time of it, and once that has come on the day as a whole, is the same.
const of = (one) => `${one.name} ${one.at.slice(0, 10)}`;

// Takes a new list; what was shown already is not shown again on the same day, also when the list was empty meanwhile.
async function remindOf(list) {
  const before = (await kept()).filter((one) => one.shown);
  const shown = new Set(before.map(of));
  const listed = new Set(list.map(of));
  const recent = Date.now() - 2 * 24 * 3600 * 1000;
  const gone = before.filter((one) => !listed.has(of(one)) && Date.parse(one.at) > recent);
  await keep([...list.map((one) => ({ ...one, shown: shown.has(of(one)) })), ...gone]);
  await remindDue();
}

async function remindDue() {
  if (self.Notification?.permission !== "granted") return;
  const list = await kept();
  const due = list.filter((one) => !one.shown && Date.parse(one.at) <= Date.now());
  for (const one of due) {
    const icon = new URL("icon-192.png", INDEX).href;
    await self.registration.showNotification(one.title, { body: one.body, tag: one.name, icon, lang: one.language });
    one.shown = true;
  }
  if (due.length > 0) await keep(list);
}

// A page that is open goes there by itself, unless something is being entered in it.
async function openToday(notification) {
  notification.close();
  const [open] = await self.clients.matchAll({ type: "window" });
  if (!open) return void (await self.clients.openWindow(new URL("#/today", INDEX).href));
  await open.focus();
  open.postMessage("today");
}
