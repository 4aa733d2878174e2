// Pictures of the page that are the same each time: a fixed journal, a fixed moment, no motion.
import { createHash } from "node:crypto";
import { crc32, deflateSync } from "node:zlib";
import { PNG } from "pngjs";
import pixelmatch from "pixelmatch";
import { demoHeap, whole } from "./ahead.js";
import { open } from "./harness.js";
import { goTo, openAll } from "./keeper.js";

export const WIDTHS_PX = [360, 768, 1280];
export const LIGHTS = ["light", "dark"];

// Mid-morning of a day on which two heaps of the invented garden are at work.
const MOMENT = new Date("2026-11-12T09:30:00Z");

// So many colours a picture keeps: grounds, inks, and the steps between them at the edges of letters.
const COLOURS = 16;
const EXACT = 6;
const APART = 32;
// Of a page that is higher its beginning [px]: what follows on it are more rows of the same lists.
const MOST_HEIGHT_PX = 5200;

/** Every place, by the way that leads to it from a first visit. */
export const LOOKS = {
  "first-visit": async () => {},
  "today-empty": async (page) => {
    await goTo(page, "Today");
    await page.getByText(/^No heap yet/).waitFor();
  },
  today: (page) => invented(page, "Today"),
  balance: (page) => invented(page, "Balance"),
  heaps: (page) => invented(page, "Heaps"),
  heap: async (page) => {
    await demoHeap(page);
    await whole(page);
    await told(page);
  },
  "looking-ahead": async (page) => {
    await LOOKS.heap(page);
    await page.getByRole("group", { name: "Over time" }).getByRole("radio").nth(1).check();
    await page.getByText("What was assumed", { exact: true }).click();
    await whole(page);
  },
  stores: (page) => invented(page, "Stores"),
  beds: (page) => invented(page, "Beds"),
  logbook: (page) => invented(page, "Logbook"),
  settings: (page) => invented(page, "Settings"),
};

/** What is in the picture, when it is not the whole page. */
const PARTS = { "looking-ahead": ".ahead" };

async function invented(page, place) {
  await page.getByRole("link", { name: "Look around in an invented garden" }).click();
  await page.locator(".today :is(.needs, .need-rest)").waitFor();
  await goTo(page, place);
  await page.locator("#title").waitFor();
  await told(page);
}

/** Until nothing that is worked out beside the page is still missing. */
async function told(page) {
  let before = "";
  for (let calm = 0; calm < 4;) {
    await page.waitForTimeout(150);
    const now = await page.evaluate(() => `${document.documentElement.scrollHeight} ${document.querySelector("#page").innerText}`);
    calm = now === before ? calm + 1 : 0;
    before = now;
  }
}

/** The page at a place, at that width and in that light. */
export async function looked(browser, address, place, width, colorScheme) {
  const context = await browser.newContext({
    viewport: { width, height: 800 }, colorScheme, deviceScaleFactor: 1, reducedMotion: "reduce", timezoneId: "UTC", locale: "en-GB",
  });
  // How much room there is differs from device to device, and from one minute to the next.
  await context.addInitScript(() => { StorageManager.prototype.estimate = async () => ({ usage: 6_000_000, quota: 6_000_000_000 }); });
  const page = await context.newPage();
  await page.clock.setFixedTime(MOMENT);
  await open(page, address);
  await page.getByRole("button", { name: "Bright sun" }).waitFor();
  await LOOKS[place](page);
  // Nothing has the focus, and the window is as high as the page: bars lie at its foot and not over the middle.
  const height = await page.evaluate(() => { document.activeElement.blur(); scrollTo(0, 0); return document.documentElement.scrollHeight; });
  await page.setViewportSize({ width, height: Math.max(800, Math.min(height, MOST_HEIGHT_PX)) });
  await told(page);
  return page;
}

/** A picture of the page; with few enough colours that it stays small. */
export async function picture(page, place) {
  const part = PARTS[place];
  const clip = await page.locator(part ?? "html").evaluate((element, most) => {
    const { left, top, width, height } = element.getBoundingClientRect();
    return { x: Math.floor(left + scrollX), y: Math.floor(top + scrollY), width: Math.ceil(width), height: Math.min(Math.ceil(height), most) };
  }, MOST_HEIGHT_PX);
  return fewColours(PNG.sync.read(await page.screenshot({ fullPage: true, clip, animations: "disabled", caret: "hide" })));
}

/** The picture with its commonest colours as they are, and every other as the nearest of them: grounds and inks stay exact. */
function fewColours(shot) {
  const pixels = new Uint32Array(shot.data.buffer, shot.data.byteOffset, shot.width * shot.height);
  const counts = new Map();
  for (const pixel of pixels) counts.set(pixel, (counts.get(pixel) ?? 0) + 1);
  const bands = (pixel) => [pixel & 255, (pixel >> 8) & 255, (pixel >> 16) & 255];
  const distance = (one, other) => one.reduce((sum, band, index) => sum + (band - other[index]) ** 2, 0);
  const kept = [];
  // The commonest as they are; of the others those that are far from all that are kept, so that a thin blue line stays blue.
  for (const [pixel] of [...counts].sort(([one, often], [other, seldom]) => seldom - often || one - other)) {
    if (kept.length < COLOURS && (kept.length < EXACT || kept.every((one) => distance(bands(one), bands(pixel)) > APART ** 2))) kept.push(pixel);
  }
  const nearest = new Map([...counts.keys()].map((pixel) => {
    const own = bands(pixel);
    return [pixel, kept.reduce((best, one) => (distance(bands(one), own) < distance(bands(best), own) ? one : best))];
  }));
  pixels.forEach((pixel, index) => { pixels[index] = nearest.get(pixel); });
  return Object.assign(shot, { kept });
}

/** The bytes of a picture of few colours: a PNG with a palette, which the library reads but does not write. */
export function written({ width, height, data, kept }) {
  const pixels = new Uint32Array(data.buffer, data.byteOffset, width * height);
  const place = new Map(kept.map((pixel, index) => [pixel, index]));
  // Four bits a pixel; each row begins with the way it is packed, which is none.
  const stride = 1 + Math.ceil(width / 2);
  const rows = Buffer.alloc(stride * height);
  for (let row = 0; row < height; row += 1) {
    for (let column = 0; column < width; column += 1) rows[row * stride + 1 + (column >> 1)] |= place.get(pixels[row * width + column]) << (column % 2 ? 0 : 4);
  }
  const chunk = (name, body) => {
    const named = Buffer.concat([Buffer.from(name), body]);
    const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(body.length);
    sum.writeUInt32BE(crc32(named));
    return Buffer.concat([length, named, sum]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  // Four bits that are places in the palette.
  head.set([4, 3, 0, 0, 0], 8);
  const palette = Buffer.from(kept.flatMap((pixel) => [pixel & 255, (pixel >> 8) & 255, (pixel >> 16) & 255]));
  const signature = Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]);
  return Buffer.concat([signature, chunk("IHDR", head), chunk("PLTE", palette), chunk("IDAT", deflateSync(rows, { level: 9, memLevel: 9 })), chunk("IEND", Buffer.alloc(0))]);
}

/** The bytes of a picture of differences. */
export const drawnBytes = (png) => PNG.sync.write(png);
export const readPicture = (bytes) => PNG.sync.read(bytes);

// Two colours this far apart count as different (of 1, black against white).
const STEP = 0.01;
// In a field of this many pixels a side ...
const FIELD_PX = 64;
// ... so many may differ: the corner of a letter, never a word or a border.
export const MOST_PX = 12;

/** How many pixels differ in the field where most do, and a picture of the differences; of two heights or widths, that. */
export function differing(before, now) {
  if (before.width !== now.width || before.height !== now.height) {
    return { pixels: Infinity, why: `it is ${now.width} x ${now.height} px and was ${before.width} x ${before.height} px`, drawn: now };
  }
  const drawn = new PNG({ width: now.width, height: now.height });
  const pixels = pixelmatch(before.data, now.data, drawn.data, now.width, now.height, { threshold: STEP, includeAA: true, windowSize: FIELD_PX });
  return { pixels, why: `in one field of ${FIELD_PX} px ${pixels} px differ, ${MOST_PX} may`, drawn };
}

/** What the pictures depend on besides the page: the browser, and how it draws the letters of the page. */
export async function madeWith(browser, address) {
  const page = await (await browser.newContext({ deviceScaleFactor: 1, colorScheme: "light" })).newPage();
  await open(page, address);
  const drawn = await page.evaluate(() => {
    const root = getComputedStyle(document.documentElement);
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [900, 160];
    const context = canvas.getContext("2d", { willReadFrequently: true });
    ["--sans", "--serif"].forEach((stack, line) => {
      ["400 17px", "700 24px"].forEach((style, part) => {
        context.font = `${style} ${root.getPropertyValue(stack)}`;
        context.fillText("Hamburgefonstiv 0123456789 ½ ° − × ✓ äöü", 10, 30 + 70 * line + 32 * part);
      });
    });
    return [...context.getImageData(0, 0, canvas.width, canvas.height).data];
  });
  await page.context().close();
  return { browser: Number.parseInt(browser.version(), 10), letters: createHash("sha256").update(Buffer.from(drawn)).digest("hex").slice(0, 32) };
}
