// What only the browser can do: keep the journal, one writer at a time, tell other tabs, read and save files, shrink pictures.
// Nothing here knows what a line says; `apps/web/src/keeping` computes the digests and decides.

const NAME = "heapwright";
const STORES = ["tail", "blocks", "facts", "pictures"];
// Longest side of a kept picture [px], and its largest size [bytes].
const PICTURE_PX = 1280;
const PICTURE_BYTES = 2 << 20;

let opened;

// What is called when another tab told something, or the browser took the database away.
let heard = () => {};

const pause = (ms) => new Promise((go) => { setTimeout(go, ms); });

// While the browser clears a database, opening it anew breaks off: a little later it opens.
async function patiently() {
  for (let again = 3; ; again -= 1) {
    try {
      return await once();
    } catch (error) {
      if (error?.name !== "AbortError" || again === 0) throw error;
      await pause(300);
    }
  }
}

function database() {
  opened ??= patiently();
  opened.catch(() => { opened = undefined; });
  return opened;
}

function once() {
  return new Promise((resolve, reject) => {
    if (!globalThis.indexedDB) throw new DOMException("", "InvalidStateError");
    const request = indexedDB.open(NAME, 1);
    // Keys stand outside the records: `tail` by position, `blocks` by the position of their last line.
    request.onupgradeneeded = () => STORES.forEach((name) => request.result.createObjectStore(name));
    request.onblocked = () => reject(new DOMException("", "VersionError"));
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      const connection = request.result;
      const forget = () => { opened = undefined; };
      connection.onversionchange = () => { connection.close(); forget(); };
      // By itself the browser closes it only when it clears what is kept.
      connection.onclose = () => { forget(); heard(); };
      resolve(connection);
    };
  });
}

// One transaction. The promise is kept when all of it is on the disk, and broken when none of it is.
async function transaction(stores, mode, work) {
  const connection = await database();
  return new Promise((resolve, reject) => {
    const of = connection.transaction(stores, mode, { durability: "strict" });
    const done = {};
    of.oncomplete = () => resolve(done.result);
    of.onabort = () => reject(done.why ?? of.error ?? new DOMException("", "AbortError"));
    work((name) => of.objectStore(name), done, of);
  });
}

const read = (store, ask) => transaction([store], "readonly", (of, done) => {
  const request = ask(of(store));
  request.onsuccess = () => { done.result = request.result; };
});

/** Up to `most` blocks that reach behind a position: first, last, lines, digests, link of each, in one row. */
export async function blocks(behind, most) {
  const all = await read("blocks", (store) => store.getAll(IDBKeyRange.lowerBound(behind, true), most));
  return all.flatMap((block) => [block.first, block.last, block.lines, block.digests, block.link]);
}

/** The lines behind a position that are in no block yet: position, line, digest, link of each, in one row. */
export async function tail(behind) {
  const rows = [];
  await transaction(["tail"], "readonly", (of) => {
    of("tail").openCursor(IDBKeyRange.lowerBound(behind, true)).onsuccess = ({ target: { result } }) => {
      if (!result) return;
      rows.push(result.key, result.value?.line, result.value?.digest, result.value?.link);
      result.continue();
    };
  });
  return rows;
}

/**
 * Puts blocks and tail lines behind the line at `expected`, all or nothing; with `emptied` the old tail is in the blocks.
 * `rows` of blocks and tail as they are read. Broken with "BehindError" when somebody else wrote in between.
 */
export function write(expected, emptied, blockRows, tailRows) {
  return transaction(["tail", "blocks"], "readwrite", (of, done, all) => {
    const ends = [];
    const put = () => {
      if (Math.max(...ends) !== expected) {
        done.why = new DOMException("", "BehindError");
        all.abort();
        return;
      }
      for (let at = 0; at < blockRows.length; at += 5) {
        const [first, last, lines, digests, link] = blockRows.slice(at, at + 5);
        of("blocks").add({ first, last, lines, digests, link }, last);
      }
      if (emptied) of("tail").clear();
      for (let at = 0; at < tailRows.length; at += 4) {
        const [position, line, digest, link] = tailRows.slice(at, at + 4);
        of("tail").add({ line, digest, link }, position);
      }
    };
    for (const name of ["tail", "blocks"]) {
      of(name).openKeyCursor(null, "prev").onsuccess = ({ target: { result } }) => {
        ends.push(result?.key ?? 0);
        if (ends.length === 2) put();
      };
    }
  });
}

export const get = (store, key) => read(store, (of) => of.get(key));

export const put = (store, key, value) => transaction([store], "readwrite", (of) => { of(store).put(value, key); });

let queue = Promise.resolve();

/** Waits until nobody else writes, in this tab or another; returns what lets the next one in. */
export function lock() {
  if (navigator.locks) {
    return new Promise((taken, refused) => {
      navigator.locks.request(NAME, () => new Promise((free) => { taken(free); })).catch(refused);
    });
  }
  const before = queue;
  return new Promise((taken) => {
    queue = new Promise((free) => { before.then(() => taken(free)); });
  });
}

const channel = "BroadcastChannel" in globalThis ? new BroadcastChannel(NAME) : undefined;

/** Tells other tabs that there is something new. */
export const tell = () => channel?.postMessage(0);

/** Calls back when another tab tells, when a page that was put to sleep comes back, and when the database is taken away. */
export function listen(hear) {
  heard = hear;
  if (channel) channel.onmessage = () => hear();
  addEventListener("pageshow", ({ persisted }) => persisted && hear());
}

// Beside the journal, in another store of the browser: how many entries it had. A journal that is gone is missed by it.
const COUNT = `${NAME}.entries`;

export function remember(count) {
  try {
    localStorage.setItem(COUNT, String(count));
  } catch {
    // Then nothing is missed.
  }
}

export function remembered() {
  try {
    return Number(localStorage.getItem(COUNT)) || 0;
  } catch {
    return 0;
  }
}

/** True when the browser promises to keep what is kept; asks it for that first when `ask`. */
export async function lasting(ask) {
  const { storage } = navigator;
  return Boolean(await storage?.persisted?.() || (ask && await storage?.persist?.()));
}

/** Bytes that the page uses, and how many it may; nothing when the browser does not tell. */
export async function room() {
  const { usage, quota } = await navigator.storage?.estimate?.() ?? {};
  return usage === undefined ? undefined : [usage, quota ?? 0];
}

/** True where the device counts the hours to twelve. */
export const halves = () => /^h1[12]$/.test(new Intl.DateTimeFormat(undefined, { hour: "numeric" }).resolvedOptions().hourCycle ?? "");

// What some browsers hand out so that the page may be put on the home screen by a button of its own; the page hears of it by
// the event "heapwright-install".
let installer;
addEventListener("beforeinstallprompt", (event) => {
  event.preventDefault();
  installer = event;
  dispatchEvent(new Event("heapwright-install"));
});
addEventListener("appinstalled", () => {
  installer = undefined;
  dispatchEvent(new Event("heapwright-install"));
});

export const canInstall = () => Boolean(installer);
export const isInstalled = () => matchMedia("(display-mode: standalone)").matches || navigator.standalone === true;

/** Lets the browser ask whether to put the page on the home screen. It hands the question out once. */
export async function install() {
  const asked = installer;
  installer = undefined;
  await asked?.prompt();
  dispatchEvent(new Event("heapwright-install"));
}

/** True when a new version is here and waits; `boot.js` marks it. */
export const updateWaits = () => document.documentElement.dataset.update === "waiting";
export const takeUpdate = () => { dispatchEvent(new Event("heapwright-take-update")); };

/** Looks for a new version and fetches it; true when one waits after it. Broken without signal. */
export async function lookForUpdate() {
  const registration = await navigator.serviceWorker?.getRegistration();
  await registration?.update();
  const fresh = registration?.installing;
  if (fresh) {
    await new Promise((done) => {
      fresh.addEventListener("statechange", () => { if (fresh.state !== "installing") done(); });
    });
  }
  return Boolean(registration?.waiting && navigator.serviceWorker.controller);
}

// What is typed for the balance and its aim is kept with each letter.
const KEPT = ".balance, [id^=aim-], [type=range], [type=file]";

/** True while something is entered that is kept nowhere yet. */
export const isEntering = () => [...document.querySelectorAll("main input, main textarea")]
  .filter((field) => !field.closest(KEPT))
  .some((field) => (/^(checkbox|radio)$/.test(field.type) ? field.closest(".log-form") && field.checked !== field.defaultChecked : field.value !== ""));

/** Ends when the browser has done what else it had to do. */
export const breath = () => new Promise((done) => { setTimeout(done); });

/** Ends after the next frame, or before long where nothing is drawn, as in a hidden tab. */
export const painted = () => new Promise((done) => {
  requestAnimationFrame(() => setTimeout(done));
  setTimeout(done, 250);
});

let turns = Promise.resolve();

/** The same in turn: of all that wait only one goes on after each frame, so that none has to bear the work of several. */
export const turn = () => (turns = turns.then(painted));

/** Notes the moment in the browser's own record, for measurements. */
export const mark = (name) => { performance.mark(name); };

export const random = (count) => crypto.getRandomValues(new Uint8Array(count));

/** Milliseconds since 1970 and local time less UTC [min]: of now, or of a local time as its field has it. */
export function moment(local) {
  const date = local ? new Date(local) : new Date();
  return [date.getTime(), -date.getTimezoneOffset()];
}

export const value = (id) => document.getElementById(id)?.value ?? "";

/** The values of all that is ticked under a name. */
export const ticked = (name) => [...document.getElementsByName(name)].filter((one) => one.checked).map((one) => one.value).join(" ");

/** What was chosen in a file field; the field is empty again after it, so that the same file can be chosen anew. */
export function chosen(id, keep) {
  const field = document.getElementById(id);
  const file = field?.files?.[0];
  if (field && !keep) field.value = "";
  return file;
}

export const slice = async (file, from, to) => new Uint8Array(await file.slice(from, to).arrayBuffer());

/** Offers a file for download. */
export function save(name, parts, type = "application/jsonl") {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob(parts, { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** A file beside the page, as bytes; undefined when it is not there. */
export async function beside(name) {
  const response = await fetch(new URL(name, import.meta.url));
  return response.ok ? new Uint8Array(await response.arrayBuffer()) : undefined;
}

/** A picture drawn anew, small: bytes of a JPEG, width, height. What else the file told (place, camera) is not in it. */
export async function shrunk(file) {
  const picture = await createImageBitmap(file, { imageOrientation: "from-image" });
  const scale = Math.min(1, PICTURE_PX / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
  for (const quality of [0.82, 0.6, 0.4]) {
    const blob = await new Promise((made) => { canvas.toBlob(made, "image/jpeg", quality); });
    if (blob && blob.size <= PICTURE_BYTES) return [new Uint8Array(await blob.arrayBuffer()), canvas.width, canvas.height];
  }
  throw new Error("too large");
}

/** A picture as a line of the file of pictures (docs/journal-format.md). */
export function pictureLine(sha256, bytes) {
  let text = "";
  for (let at = 0; at < bytes.length; at += 0x8000) text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return `${JSON.stringify({ picture: sha256, base64: btoa(text) })}\n`;
}

/** The lines of a file of pictures behind its first; undefined when it is another file. */
export async function pictureLines(file) {
  if (!(await file.slice(0, 64).text()).startsWith('{"heapwright_pictures":1,')) return undefined;
  return (await file.text()).split("\n").slice(1).filter(Boolean);
}

/** Digest and bytes that a line of such a file holds; undefined when it holds none. */
export function pictureIn(line) {
  try {
    const { picture, base64 } = JSON.parse(line);
    return [picture, Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))];
  } catch {
    return undefined;
  }
}

export const shown = (bytes) => URL.createObjectURL(new Blob([bytes], { type: "image/jpeg" }));
export const hidden = (address) => URL.revokeObjectURL(address);

// Speaks the language of the page to a worker, before anything is asked of it.
function speaking(worker) {
  const texts = globalThis.heapwright_texts;
  if (texts) worker.postMessage({ texts });
  return worker;
}

// Starts a worker that computes what becomes of a heap, and what needs no simulation.
const simulating = () => speaking(new Worker(new URL("./simulator.js", import.meta.url), { type: "module" }));

let simulator;
let question = 0;

/**
 * Asks the worker beside the page, which is started by the first question; a newer question ends an older one. `hear` is
 * called with what the worker tells. False when the browser has no workers.
 */
export function simulate(text, hear) {
  question += 1;
  try {
    simulator ??= simulating();
  } catch {
    return false;
  }
  simulator.onmessage = async ({ data: [number, what, ...rest] }) => {
    // How far it is needs next to no work.
    if (what !== "progress") await turn();
    if (number === question) hear(what, ...rest);
  };
  simulator.onerror = () => { stop(); hear("broken"); };
  const asked = question;
  // To start a worker and to hand it a long text are two pieces of work.
  turn().then(() => { if (asked === question) simulator.postMessage([asked, text]); });
  return true;
}

/** Ends the worker, and with it whatever it computes. */
export function stop() {
  question += 1;
  simulator?.terminate();
  simulator = undefined;
}

let teller;
let told = 0;

/** The same of what needs no simulation, by a worker of its own, which a simulation does not hold up; no text ends it. */
export function ask(text, hear) {
  told += 1;
  if (!text) {
    teller?.terminate();
    teller = undefined;
    return true;
  }
  try {
    teller ??= simulating();
  } catch {
    return false;
  }
  teller.onmessage = async ({ data: [number, ...rest] }) => {
    await turn();
    if (number === told) hear(...rest);
  };
  teller.onerror = () => hear("broken");
  const asked = told;
  turn().then(() => { if (asked === told) teller.postMessage([asked, text, true]); });
  return true;
}

/**
 * Lets a worker make a page to print and offers it for download under `name`. `hear` is called with "pressed", "unfetched",
 * "failed" and a sentence, "unpressed" and a detail, or "broken". False when the browser has no workers.
 */
export function press(name, question, document, letter, hear) {
  let worker;
  try {
    worker = speaking(new Worker(new URL("./press.js", import.meta.url), { type: "module" }));
  } catch {
    return false;
  }
  worker.onmessage = ({ data: [what, told] }) => {
    worker.terminate();
    if (what === "pressed") save(name, [told], "application/pdf");
    hear(what, what === "pressed" ? "" : told);
  };
  worker.onerror = () => { worker.terminate(); hear("broken"); };
  worker.postMessage([question, document, letter]);
  return true;
}

const REMINDING = "heapwright.reminders";

/**
 * How this browser reminds: "" when it cannot, "denied" when it may not, "off", "open" while the page is open, "closed" when it
 * comes back for it while the page is closed.
 */
export function reminding() {
  if (!globalThis.Notification || !navigator.serviceWorker) return "";
  if (Notification.permission === "denied") return "denied";
  return (Notification.permission === "granted" && localStorage.getItem(REMINDING)) || "off";
}

/** Asks whether reminders may be shown, and to be woken for them; returns how it reminds from now on. */
export async function startReminding() {
  if ((await Notification.requestPermission()) !== "granted") return reminding();
  let how = "closed";
  try {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration.periodicSync.register("reminders", { minInterval: 6 * 3600 * 1000 });
  } catch {
    how = "open";
  }
  localStorage.setItem(REMINDING, how);
  return how;
}

// Longest that a list waits for the worker that shows it, which is yet to be fetched at a first visit [ms].
const MOST_WAIT_MS = 10_000;

// Counts the lists: none is handed over once a newer one was begun.
let lists = 0;
// Ends the worker that works out the list begun last.
let endMinder = () => {};

function beginList() {
  endMinder();
  lists += 1;
  return lists;
}

async function handOver(list, number) {
  const registration = await Promise.race([navigator.serviceWorker?.ready, pause(MOST_WAIT_MS)]);
  if (number !== lists || !registration?.active) return false;
  registration.active.postMessage({ reminders: list });
  return true;
}

/**
 * Hands over what has a day, as JSON; what is due is shown at once. It takes the place of any list begun before. False when
 * nobody is there to show it, or when a newer list was begun meanwhile.
 */
export const remind = async (list) => handOver(JSON.parse(list), beginList());

/** The same of what a worker of its own works out first; false as well when that fails. */
export function remindAnew(question) {
  const number = beginList();
  let minder;
  try {
    minder = simulating();
  } catch {
    return Promise.resolve(false);
  }
  return new Promise((done) => {
    const end = () => { minder.terminate(); done(false); };
    endMinder = end;
    minder.onerror = end;
    minder.onmessage = ({ data: [, what, told] }) => {
      minder.terminate();
      done(taken(what, told, number).catch(() => false));
    };
    minder.postMessage([1, question, true]);
  });
}

async function taken(what, told, number) {
  // A message may have been on its way when its worker was ended, and reminding may have been ended as well.
  if (what !== "told" || number !== lists || !/open|closed/.test(reminding())) return false;
  return handOver(JSON.parse(told).reminders, number);
}

/** Ends reminding. */
export async function stopReminding() {
  localStorage.removeItem(REMINDING);
  const emptied = remind("[]");
  const registration = await navigator.serviceWorker.getRegistration();
  await registration?.periodicSync?.unregister("reminders");
  // Where nobody shows any there is nobody to wait for.
  if (registration) await emptied;
}

/** The language that was chosen; "" for that of the device. Choosing one loads the page anew. */
export const languageChosen = () => localStorage.getItem("heapwright.language") ?? "";
export function chooseLanguage(tag) {
  if (tag) localStorage.setItem("heapwright.language", tag);
  else localStorage.removeItem("heapwright.language");
  location.reload();
}
