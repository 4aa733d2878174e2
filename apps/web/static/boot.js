// Starts the page: wasm first, then the worker that keeps it for days without signal.
import init, { show_page } from "./heapwright_web.js";
import * as device from "./device.js";

const root = document.documentElement;

// Where the wasm finds what it asks of the browser.
globalThis.heapwright_device = device;

// Languages other than English, by the first part of their tag.
const TEXTS = { de: () => import("./texts-de.js") };

// The language that was chosen, or the first of the device's that is there.
function language() {
  let chosen;
  try {
    chosen = localStorage.getItem("heapwright.language");
  } catch {
    // Nothing is kept on this device: as it is set.
  }
  const tags = chosen ? [chosen] : navigator.languages.map((tag) => tag.split("-")[0]);
  return tags.find((tag) => tag === "en" || tag in TEXTS);
}

// Leaves the texts of another language where the wasm and the workers find them, and says them in the first paint.
async function speak() {
  const fetched = TEXTS[language()];
  if (!fetched) return;
  try {
    const { default: texts } = await fetched();
    globalThis.heapwright_texts = texts;
    root.lang = texts.tag;
    root.dir = texts.direction;
    const painted = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (painted.nextNode()) painted.currentNode.data = said(painted.currentNode.data);
  } catch (error) {
    console.warn("The texts of this language could not be fetched: the page is English.", error);
  }
}

const said = (text) => globalThis.heapwright_texts?.paint[text] ?? text;

// What stands behind "#" in the address says which place it is: the way past the bar leaves it.
document.querySelector(".skip").addEventListener("click", (event) => {
  event.preventDefault();
  document.getElementById("title")?.focus();
});

try {
  await Promise.all([speak(), init({ module_or_path: new URL("./heapwright_web_bg.wasm", import.meta.url) })]);
  await show_page();
  root.dataset.state = "ready";
  performance.mark("heapwright-ready");
} catch (error) {
  root.dataset.state = "failed";
  const line = document.getElementById("starting");
  if (line) line.textContent = said("The page could not start. Load it again; if that does not help, update the browser.");
  console.error(error);
}

// A reminder was tapped.
navigator.serviceWorker?.addEventListener("message", ({ data }) => {
  if (data === "today" && !device.isEntering()) location.hash = "#/today";
});

// A new version is fetched beside the running one and waits. The page may offer it (event "heapwright-update") and, when
// the keeper agrees, answers with the event "heapwright-take-update"; otherwise it takes over at the next start.
if ("serviceWorker" in navigator) {
  try {
    const registration = await navigator.serviceWorker.register(new URL("./sw.js", import.meta.url));
    const offer = () => {
      if (!registration.waiting || !navigator.serviceWorker.controller) return;
      root.dataset.update = "waiting";
      dispatchEvent(new CustomEvent("heapwright-update"));
    };
    offer();
    // What took over waits no more.
    navigator.serviceWorker.addEventListener("controllerchange", () => {
      delete root.dataset.update;
      dispatchEvent(new CustomEvent("heapwright-update"));
    });
    registration.addEventListener("updatefound", () => registration.installing?.addEventListener("statechange", offer));
    addEventListener("heapwright-take-update", () => {
      navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
      registration.waiting?.postMessage("take over");
    });
  } catch (error) {
    console.warn("This browser does not keep the page for use without signal.", error);
  }
}
