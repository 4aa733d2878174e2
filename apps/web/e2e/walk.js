// The way of the Tab key through the page: where it stops, what its ring looks like, what lies over it.
import { withColours } from "./colours.js";

/** Marks from the start what listens to a tap, so that nothing that a pointer can use is overlooked. */
export const markTaps = (context) => context.addInitScript(() => {
  const add = EventTarget.prototype.addEventListener;
  EventTarget.prototype.addEventListener = function (type, ...rest) {
    if (this instanceof Element && ["click", "pointerdown", "pointerup", "mousedown", "touchstart"].includes(type)) this.setAttribute("data-tapped", "");
    return add.call(this, type, ...rest);
  };
});

/**
 * All that a pointer can use at this moment, as the numbers that its elements now carry; of radio buttons the one that Tab
 * stops at. `unreachable` are elements that listen to taps and that no key reaches.
 */
export const usable = (page) => page.evaluate(() => {
  const NATIVE = "a[href], button, input, select, textarea, summary, [tabindex='0']";
  const name = (element) => `${element.tagName.toLowerCase()} ${(element.getAttribute("aria-label") ?? element.textContent.trim()) || element.id}`.slice(0, 60);
  const isStop = (element) => {
    if (element.type !== "radio") return true;
    const group = [...document.querySelectorAll("input[type=radio]")].filter((one) => one.name === element.name && one.checkVisibility());
    return element === (group.find((one) => one.checked) ?? group[0]);
  };
  document.querySelectorAll("[data-stop]").forEach((element) => element.removeAttribute("data-stop"));
  const stops = [...document.querySelectorAll(NATIVE)].filter((element) => element.checkVisibility() && !element.disabled && isStop(element));
  stops.forEach((element, index) => { element.dataset.stop = index; });
  const unreachable = [...document.querySelectorAll("[data-tapped]")]
    .filter((element) => element.checkVisibility() && !element.matches(NATIVE) && !element.querySelector(NATIVE)).map(name);
  return { stops: stops.map(name), unreachable };
});

/** What has the focus: its number, its name, the ring around it, and whether a bar lies over its middle or over any of it. */
export const atFocus = (page) => page.evaluate(() => {
  const element = document.activeElement;
  const { rgba, behind, ratio } = window.colours;
  const own = getComputedStyle(element);
  // A card that is a link has the ring around all of it.
  const ring = own.outlineStyle === "none" ? getComputedStyle(element, "::after") : own;
  const drawn = ring.outlineStyle === "none" ? 0 : Number.parseFloat(ring.outlineWidth);
  const isInside = Number.parseFloat(ring.outlineOffset) < 0;
  const ground = behind(isInside ? element : element.parentElement);

  const box = element.getBoundingClientRect();
  const bar = (top) => {
    for (let at = top; at && !at.contains(element); at = at.parentElement) if (["fixed", "sticky"].includes(getComputedStyle(at).position)) return true;
    return false;
  };
  const isFree = (x, y) => {
    const top = document.elementFromPoint(x, y);
    // A head of a table that sticks within what has the focus is a part of it, and covers nothing.
    return top !== null && (element.contains(top) || !bar(top));
  };
  // A box that is higher than half the window shows its beginning.
  const isHigh = box.height > innerHeight / 2;
  const middle = { x: Math.min(box.left + box.width / 2, innerWidth - 1), y: isHigh ? Math.max(box.top, 0) + 24 : box.top + box.height / 2 };
  const rows = isHigh ? [middle.y] : [box.top + 1, middle.y, box.bottom - 1];
  const columns = [box.left + 1, middle.x, Math.min(box.right, innerWidth) - 1];
  return {
    stop: element.dataset.stop === undefined ? undefined : Number(element.dataset.stop),
    what: `${element.tagName.toLowerCase()} ${(element.getAttribute("aria-label") ?? (element.labels?.[0]?.textContent ?? element.textContent).trim()) || element.id}`.slice(0, 60),
    type: element.type,
    group: element.type === "radio" ? element.name : undefined,
    drawn,
    contrast: drawn > 0 ? ratio(rgba(ring.outlineColor), ground) : 0,
    isSeen: isFree(middle.x, middle.y),
    isWhole: rows.every((y) => columns.every((x) => isFree(x, y))),
  };
});

/** Goes through the whole page by Tab alone; what was stopped at, in this order, each once. */
export async function walked(page) {
  await withColours(page);
  const { stops, unreachable } = await usable(page);
  // A field for a time has a stop for each of its parts.
  const most = 3 * stops.length + 40;
  const isOut = () => page.evaluate(() => [document.body, document.documentElement].includes(document.activeElement));
  // From wherever the focus is to the end of the page: there it leaves, and comes in again at the beginning.
  let isLeft = false;
  for (let step = 0; step < most && !isLeft; step += 1) {
    await page.keyboard.press("Tab");
    isLeft = await isOut();
  }
  const reached = [];
  for (let step = 0; isLeft && step < most; step += 1) {
    await page.keyboard.press("Tab");
    if (await isOut()) return { stops, unreachable, reached, isLeft };
    const at = await atFocus(page);
    if (at.stop === undefined || at.stop !== reached.at(-1)?.stop) reached.push(at);
  }
  return { stops, unreachable, reached, isLeft: false };
}
