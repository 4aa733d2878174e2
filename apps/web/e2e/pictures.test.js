// Pictures are read with a cursor: by keys, by a tap, by buttons, aloud, and the same in either direction of script.
import assert from "node:assert/strict";
import { describe } from "node:test";
import { banded, choose, demoHeap, INSIDE, rows, RUNS_MS } from "./ahead.js";
import { axe, PHONE, rig, sidewaysScroll } from "./harness.js";
import { folded, goTo, plain, textOf } from "./keeper.js";

const { visiting } = rig();
const steps = { timeout: 3 * RUNS_MS };
const chart = (page) => page.getByRole("slider", { name: /over time$/ });
const line = (page) => textOf(page.locator(".chart-line"));
const spoken = async (page) => plain(await chart(page).getAttribute("aria-valuetext"));
const at = async (page) => Number(await chart(page).getAttribute("aria-valuenow"));
const ringX = (page) => page.locator(".chart-mark circle").evaluate((ring) => Number(ring.getAttribute("cx")));

describe("the cursor of a picture over time", () => {
  visiting("keys move it by a day, a week and to the ends, and what it says is spoken, written and in the table", async (page) => {
    await demoHeap(page);
    await banded(page);
    assert.equal(await chart(page).getAttribute("aria-label"), "Core temperature over time");
    assert.match(await spoken(page), /^Now: −?\d+ °C likely; half of the runs −?\d+ to −?\d+, nine of ten −?\d+ to −?\d+\./);
    const now = await at(page);
    await chart(page).focus();
    const moves = [["ArrowRight", now + 1], ["ArrowUp", now + 2], ["ArrowLeft", now + 1], ["ArrowDown", now], ["PageUp", now + 7], ["PageDown", now], ["Home", 0], ["ArrowLeft", 0]];
    for (const [key, expected] of moves) {
      await page.keyboard.press(key);
      assert.equal(await at(page), expected, key);
      assert.equal(await spoken(page), await line(page), key);
    }
    await page.keyboard.press("End");
    assert.equal(await at(page), Number(await chart(page).getAttribute("aria-valuemax")));
    const table = await rows(page, "This picture as a table");
    const last = table.at(-1);
    assert.ok((await line(page)).startsWith(plain(`${last[0]}: ${last[1]} °C likely; half of the runs ${last[2]}, nine of ten ${last[3]}.`)), `${await line(page)} and ${last}`);
    assert.equal(table.length, (await at(page)) + 1, "a row for each day of the cursor");
    // Another key is not taken from the page.
    await chart(page).focus();
    await page.keyboard.press("Tab");
    assert.equal(await page.evaluate(() => document.activeElement.getAttribute("aria-label")), "A day earlier");
  }, steps);

  visiting("keys follow what one sees from right to left as well, and a tap moves it there", async (page) => {
    await demoHeap(page);
    await banded(page);
    for (const direction of ["ltr", "rtl"]) {
      await page.evaluate((dir) => { document.documentElement.dir = dir; }, direction);
      await chart(page).focus();
      await page.keyboard.press("Home");
      const first = await ringX(page);
      await page.keyboard.press("ArrowRight");
      assert.ok((await ringX(page)) > first, `${direction}: right goes right`);
      const box = await chart(page).boundingBox();
      const width = await page.locator(".time-picture").evaluate((picture) => picture.viewBox.baseVal.width);
      for (const share of [0.3, 0.8]) {
        await chart(page).tap({ position: { x: box.width * share, y: box.height / 3 } });
        const off = Math.abs((await ringX(page)) - width * share);
        assert.ok(off < 6, `${direction}: ${off} px from the tap at ${share}`);
      }
      assert.equal(await page.locator(".time-picture").evaluate((picture) => getComputedStyle(picture).direction), "ltr");
      assert.equal(await sidewaysScroll(page), 0);
    }
  }, steps);

  visiting("buttons of 48 px go on by a day and tell it, and the day stays when another value is chosen", async (page) => {
    await demoHeap(page);
    await banded(page);
    const now = await at(page);
    const later = page.getByRole("button", { name: "A day later" });
    const box = await later.boundingBox();
    assert.ok(box.width >= 48 && box.height >= 48, `${box.width} x ${box.height}`);
    await later.tap();
    await later.tap();
    await page.getByRole("button", { name: "A day earlier" }).tap();
    assert.equal(await at(page), now + 1);
    const told = await textOf(page.locator(".chart-read [role=status]"));
    assert.equal(told, await line(page));
    await choose(page, "Over time", "Moisture");
    await page.getByRole("slider", { name: "Moisture over time" }).waitFor();
    assert.equal(await at(page), now + 1);
    assert.match(await spoken(page), /: \d+ % likely;/);
  }, steps);

  visiting("what was done stands in lanes below the picture, in the table and at its day", async (page) => {
    await demoHeap(page);
    await banded(page);
    const lanes = await page.locator(".time-picture .time-lane").count();
    const signs = await page.locator(".time-picture .time-done").count();
    assert.ok(lanes > 0 && signs >= lanes, `${lanes} lanes, ${signs} signs`);
    const table = await rows(page, "This picture as a table");
    const day = table.findIndex((row) => row.at(-1) !== "");
    assert.ok(day >= 0, "nothing was done");
    await chart(page).focus();
    await page.keyboard.press("Home");
    for (let step = 0; step < day; step += 1) await page.keyboard.press("ArrowRight");
    assert.ok((await line(page)).endsWith(plain(`Done and read on this day: ${table[day].at(-1)}.`)), await line(page));
    // Words of the axis and of the lanes do not cover each other.
    const boxes = await page.locator(".time-picture text").evaluateAll((all) => all.map((one) => {
      const { left, right, top, bottom } = one.getBoundingClientRect();
      return { text: one.textContent, left, right, top: top + 2, bottom: bottom - 2 };
    }));
    const touching = boxes.flatMap((one, index) => boxes.slice(index + 1)
      .filter((other) => one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom)
      .map((other) => `${one.text} and ${other.text}`));
    assert.deepEqual(touching, []);
  }, steps);

  visiting("axe finds nothing in it", async (page) => {
    await demoHeap(page);
    await banded(page);
    assert.deepEqual((await axe(page)).violations, []);
  }, steps);
});

describe("the cut and the mix map", () => {
  visiting("the steps of the cut are areas within its outline", async (page) => {
    await demoHeap(page);
    await page.locator(`${INSIDE} .cut-outline`).waitFor({ state: "attached", timeout: RUNS_MS });
    await choose(page, "Shown in the cut", "Moisture");
    await page.locator(".cut-picture [class^=wet-]").first().waitFor({ state: "attached" });
    // At one moment: the cut is drawn anew while runs come in.
    const [outline, ...steps] = await page.evaluate(() => [...document.querySelectorAll(".cut-picture .cut-outline, .cut-picture path[class^=wet-]")]
      .sort((one, other) => Number(other.matches(".cut-outline")) - Number(one.matches(".cut-outline")))
      .map((shape) => { const { x, y, width, height } = shape.getBBox(); return { x, y, width, height }; }));
    assert.ok(outline.width > 50 && steps.length > 0);
    for (const step of steps) {
      assert.ok(step.x >= outline.x - 0.3 && step.x + step.width <= outline.x + outline.width + 0.3, JSON.stringify(step));
      assert.ok(step.y >= outline.y - 0.3 && step.y + step.height <= outline.y + outline.height + 0.3, JSON.stringify(step));
    }
  }, steps);

  visiting("numbers on the map cover neither each other nor the mixture", async (page) => {
    await goTo(page, "Balance");
    await folded(page, "The map as a table").waitFor();
    const { numbers, here } = await page.evaluate(() => {
      const disc = (circle) => ({ x: Number(circle.getAttribute("cx")), y: Number(circle.getAttribute("cy")), r: Number(circle.getAttribute("r")) });
      return { numbers: [...document.querySelectorAll(".map-badge")].map(disc), here: disc(document.querySelector(".map-here")) };
    });
    assert.ok(numbers.length > 1);
    const all = [...numbers, here];
    all.forEach((one, index) => all.slice(index + 1).forEach((other) => {
      assert.ok(Math.hypot(one.x - other.x, one.y - other.y) > one.r + other.r, JSON.stringify([one, other]));
    }));
  });
});

describe("a desk", () => {
  const DESK = { ...PHONE, hasTouch: false, isMobile: false, viewport: { width: 1280, height: 900 } };
  visiting("lists stand beside what goes with them, beds by name, and bright sun at the end of the bar", async (page) => {
    await demoHeap(page);
    // The place of a heap counts as one of Heaps: first another.
    for (const place of ["Stores", "Beds", "Logbook", "Heaps"]) {
      await goTo(page, place);
      await page.locator(".sides").waitFor();
      const [one, other] = await page.locator(".sides").evaluate((sides) => [...sides.children].filter((child) => child.checkVisibility()).map((child) => child.getBoundingClientRect().toJSON()));
      assert.ok(other.left >= one.right, `${place}: side by side`);
      assert.ok(Math.abs(other.top - one.top) < 2, `${place}: from one height`);
    }
    await goTo(page, "Beds");
    const names = await page.locator(".bed-card h2").allTextContents();
    assert.deepEqual(names, [...names].sort((one, two) => one.localeCompare(two, "en", { numeric: true, sensitivity: "base" })));
    const sun = await page.locator(".sun").boundingBox();
    const bar = await page.getByRole("navigation", { name: "Places" }).boundingBox();
    assert.ok(sun.x >= bar.x + bar.width - 1, "after the places");
  }, { ...steps, viewport: DESK.viewport });
});
