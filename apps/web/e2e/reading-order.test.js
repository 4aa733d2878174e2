// What is read aloud, from Chromium's accessibility tree: all that is seen, nothing that is hidden, in the order in which it stands.
// `UPDATE_READING_ORDER=1 node --test reading-order.test.js` writes the records in fixtures/reading-order anew.
import assert from "node:assert/strict";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { describe, test } from "node:test";
import { DIRECTIONS, open, rig } from "./harness.js";
import { STATES } from "./states.js";
import { called, notRead, notSeen, outOfOrder, read, record, skippedRanks, treeOf, unnamedLandmarks } from "./tree.js";

const our = rig();
const RECORDS = new URL("fixtures/reading-order/", import.meta.url);
// One moment for the records, so that dates and ages in names stay; times of day are those of one zone.
const MOMENT = new Date("2026-11-12T09:30:00Z");

async function visit(state, width, prepare = async () => {}) {
  const context = await our.browser.newContext({ viewport: { width, height: 740 }, timezoneId: "UTC", locale: "en-GB" });
  const page = await context.newPage();
  await prepare(page);
  await open(page, our.program.address);
  await page.getByRole("button", { name: "Bright sun" }).waitFor();
  await STATES[state](page);
  return page;
}

/** Makes the window as high as the page, so that what sticks to an edge of it lies where it belongs. */
async function unrolled(page, width) {
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({ width, height: height + 200 });
}

/** What is read in place of a text that is hidden from assistive technology on purpose; nothing when there is none. */
function standIn(nodes) {
  const figures = nodes.filter((node) => node.role === "figure");
  const has = (test) => nodes.some(test);
  return ({ path, text }) => {
    const is = (name) => path.some((one) => one.class.split(" ").includes(name));
    // The numbers of a picture: its figure has a sentence with numbers, and a table follows it.
    const picture = { "map-picture": ["Mix map", "The map as a table"], "time-picture": ["Looking ahead", "This picture as a table"], "cut-picture": ["Inside", "This cut as a table"] };
    for (const [name, [figure, table]] of Object.entries(picture)) {
      if (is(name)) return figures.some((node) => node.name.startsWith(figure) && [...read(node)].some((inner) => inner.role === "StaticText" && /\d/.test(inner.name))) && has((node) => node.role === "DisclosureTriangle" && node.name === table);
    }
    // The number of an arrow on the map, beside what it adds: the table of the map has a row for it.
    if (is("badge") || is("map-number")) return has((node) => node.role === "DisclosureTriangle" && node.name === "The map as a table");
    if (is("stock-word")) return has((node) => node.role === "textbox" && / in store/.test(node.name)) && text.length > 0;
    // The words that several controls have in common: each is called by them and by what it is for, in one piece.
    if (path.some(({ name }) => ["a", "button", "summary"].includes(name))) {
      return has((node) => ["link", "button", "DisclosureTriangle"].includes(node.role) && node.name.startsWith(`${text}, `));
    }
    return false;
  };
}

describe("reading order", () => {
  for (const state of Object.keys(STATES)) {
    for (const width of [360, 1280]) {
      test(`what is read is what is seen, in the order in which it stands, with ranks and names: ${state}, ${width} px`, async (run) => {
        const page = await visit(state, width);
        await unrolled(page, width);
        for (const direction of DIRECTIONS) {
          await page.evaluate((dir) => { document.documentElement.dir = dir; }, direction);
          const tree = await treeOf(page);
          const nodes = [...read(tree.root)];
          assert.ok(nodes.length > 30 && tree.texts.length > 10, `${nodes.length} nodes, ${tree.texts.length} texts`);
          assert.deepEqual([...new Set(outOfOrder(tree.root, direction))], [], `order, ${direction}`);
          assert.deepEqual(skippedRanks(tree.root), [], "ranks of headings");
          assert.deepEqual(nodes.filter((node) => node.role === "heading" && node.level === 1).length, 1, "one heading of the first rank");
          assert.deepEqual(unnamedLandmarks(tree.root), [], "names of landmarks and figures");
          assert.deepEqual([...new Set(notRead(tree, standIn(nodes)))], [], "seen and not read");
          assert.deepEqual([...new Set(notSeen(tree))], [], "read and not seen");
          if (direction === "ltr") run.diagnostic(`${nodes.length} nodes, ${tree.texts.length} texts`);
        }
        await page.context().close();
      });
    }
  }

  test("the checks find what is wrong", async () => {
    const page = await visit("first visit", 360);
    await unrolled(page, 360);
    const faults = async (spoil) => {
      await page.evaluate(spoil);
      const tree = await treeOf(page);
      return [outOfOrder(tree.root), skippedRanks(tree.root), unnamedLandmarks(tree.root), notRead(tree, standIn([...read(tree.root)])), notSeen(tree)].map((list) => list.length > 0);
    };
    const sheet = (text) => `const sheet = new CSSStyleSheet(); sheet.replaceSync(${JSON.stringify(text)}); document.adoptedStyleSheets = [sheet];`;
    assert.deepEqual(await faults("0"), [false, false, false, false, false], "as it is");
    assert.equal((await faults(sheet(".hand .tiles { order: -1; }")))[0], true, "tiles that are shown above the heading they follow");
    await page.evaluate("document.adoptedStyleSheets = []");
    assert.equal((await faults("document.querySelector('.reach h2').outerHTML = '<h4>In reach</h4>'"))[1], true, "a rank that is skipped");
    assert.equal((await faults("document.querySelector('section.hand').setAttribute('aria-labelledby', 'map-title')"))[2], true, "two of one name");
    assert.equal((await faults("document.querySelector('.hand .line-name').setAttribute('aria-hidden', 'true')"))[3], true, "a name that is hidden");
    await page.context().close();
  });
});

// The record of each place; what a day computes is left out, names of controls, headings and landmarks stay.
const PLACES = {
  "first-visit": "first visit", "today-empty": "today without a heap", today: "today", heaps: "no heap yet", heap: "a heap", stores: "something put by",
  beds: "a plan of the beds", logbook: "the logbook", settings: "settings",
};

describe("the record of what is read", () => {
  for (const [place, state] of Object.entries(PLACES)) {
    test(`the record of a place is what it was: ${place}`, async () => {
      const page = await visit(state, 360, (page) => page.clock.setFixedTime(MOMENT));
      await page.evaluate(() => document.querySelectorAll("details[open]").forEach((details) => { details.open = false; }));
      const { root } = await treeOf(page);
      const now = record(root);
      const file = new URL(`${place}.txt`, RECORDS);
      if (process.env.UPDATE_READING_ORDER) {
        mkdirSync(RECORDS, { recursive: true });
        writeFileSync(file, now);
      }
      assert.equal(now, readFileSync(file, "utf8"), `${place}.txt; when the change is meant, UPDATE_READING_ORDER=1 writes it anew`);
      assert.ok(now.includes(called({ role: "navigation", name: "Places" })));
      await page.context().close();
    });
  }
});
