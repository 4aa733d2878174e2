// A keeper without a pointer: everything is reached, seen and done with Tab, Enter, Space and the arrow keys.
import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { open, rig } from "./harness.js";
import { opened, texts, told } from "./journal.js";
import { answer, inHand, sentence, textOf } from "./keeper.js";
import { STATES } from "./states.js";
import { markTaps, walked } from "./walk.js";

const our = rig({ viewport: { width: 412, height: 800 } });
const { visiting } = our;

/** A first visit in that state, with what listens to taps marked. */
async function visit(options, state) {
  const context = await our.browser.newContext(options);
  await markTaps(context);
  const page = await context.newPage();
  await open(page, our.program.address);
  // It comes a little later than the rest.
  await page.getByRole("button", { name: "Bright sun" }).waitFor();
  await STATES[state](page);
  return page;
}

describe("the Tab walk", () => {
  for (const state of Object.keys(STATES)) {
    for (const options of [{ viewport: { width: 360, height: 640 }, colorScheme: "light" }, { viewport: { width: 1280, height: 800 }, colorScheme: "dark" }]) {
      test(`Tab reaches all that a pointer can use, in order, with a ring of 2 px and 3:1 that no bar covers: ${state}, ${options.viewport.width} px, ${options.colorScheme}`, async (run) => {
        const page = await visit(options, state);
        const { stops, unreachable, reached, isLeft } = await walked(page);
        assert.ok(isLeft, "a trap");
        assert.deepEqual(unreachable, [], "can be tapped, and not reached");
        assert.deepEqual(reached.map((one) => stops[one.stop] ?? `not usable: ${one.what}`), stops);
        assert.deepEqual(reached.filter((one) => one.drawn < 2).map((one) => one.what), [], "no ring");
        assert.deepEqual(reached.filter((one) => one.contrast < 3).map((one) => `${one.contrast.toFixed(2)} ${one.what}`), [], "a pale ring");
        assert.deepEqual(reached.filter((one) => !one.isSeen).map((one) => one.what), [], "covered");
        run.diagnostic(`${stops.length} stops; palest ring ${Math.min(...reached.map((one) => one.contrast)).toFixed(1)}:1; under an edge of a bar: ${reached.filter((one) => !one.isWhole).length}`);
        await page.context().close();
      });
    }
  }

  for (const state of ["settings", "a reading being logged", "looking ahead"]) {
    test(`arrow keys reach every choice of a group that Tab stops at once: ${state}`, async () => {
      const page = await visit({ viewport: { width: 1280, height: 800 } }, state);
      const groups = await page.evaluate(() => [...new Set([...document.querySelectorAll("input[type=radio]")].filter((one) => one.checkVisibility()).map((one) => one.name))]);
      assert.ok(groups.length > 0);
      for (const group of groups) {
        const at = () => page.evaluate((group) => [...document.querySelectorAll("input[type=radio]")].filter((one) => one.name === group && one.checkVisibility()).indexOf(document.activeElement), group);
        await tabUntil(page, async () => (await at()) >= 0, group);
        const size = await page.evaluate((group) => [...document.querySelectorAll("input[type=radio]")].filter((one) => one.name === group && one.checkVisibility()).length, group);
        const seen = new Set([await at()]);
        for (let step = 1; step < size; step += 1) {
          await page.keyboard.press("ArrowDown");
          seen.add(await at());
        }
        assert.deepEqual([...seen].sort(), Array.from({ length: size }, (_, index) => index), group);
      }
      await page.context().close();
    });
  }
});

/** Tabs on, or back, until something is so; round the page if need be. */
async function tabUntil(page, isThere, what, key = "Tab") {
  for (let step = 0; step < 400; step += 1) {
    await page.keyboard.press(key);
    if (await isThere()) return;
  }
  assert.fail(`${key} never reached ${what}`);
}

/** Tabs on, or back, until the focus is on the control of that name. */
async function tabTo(page, name, key = "Tab") {
  await tabUntil(page, () => page.evaluate(([name, isPattern]) => {
    const element = document.activeElement;
    const label = (element.getAttribute("aria-label") ?? (element.labels?.[0] ?? element).textContent).replace(/\s+/g, " ").trim();
    return isPattern ? new RegExp(name).test(label) : label === name;
  }, [name.source ?? name, name instanceof RegExp]), String(name), key);
}

/** Tabs to a control and presses it. */
async function press(page, name, key = "Enter") {
  await tabTo(page, name);
  await page.keyboard.press(key);
}

/** Tabs to a field and types, in place of what is in it. */
async function type(page, name, text) {
  await tabTo(page, name);
  await page.keyboard.press("Control+A");
  await page.keyboard.type(text);
}

/** Goes to a place by the bar; its heading has the focus then. */
async function go(page, name) {
  await press(page, name);
  await page.waitForFunction((name) => document.querySelector(".places [aria-current]")?.textContent.trim() === name && document.activeElement.id === "title", name);
  await opened(page);
}

const focused = (page) => page.evaluate(() => document.activeElement.id || document.activeElement.textContent.trim());

describe("the whole job by keys alone", () => {
  visiting("a mixture is balanced: put in hand, taken out, counted, measured, searched, undone", async (page) => {
    await tabTo(page, "Clear all");
    await page.keyboard.press("Enter");
    assert.equal(await textOf(sentence(page)), "Nothing in hand yet. Tap what you have.");
    assert.equal(await focused(page), "Clear all", "the focus stays");
    await tabTo(page, "Veg scraps");
    await page.keyboard.press("Enter");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    assert.match(await textOf(sentence(page)), /^Put [\d½]+ buckets? of shredded leaves/);
    const before = await answer(page);

    await tabTo(page, "How many, Fresh grass", "Shift+Tab");
    await page.keyboard.press("Control+A");
    await page.keyboard.type("3");
    const more = await answer(page);
    assert.notDeepEqual(more, before);
    await tabTo(page, "Measure, Fresh grass");
    await page.keyboard.press("ArrowDown");
    assert.equal(await inHand(page, "Fresh grass").getByLabel("Measure").inputValue(), "trug");
    assert.notDeepEqual(await answer(page), more);

    await tabTo(page, "Shredded leaves");
    await page.keyboard.press("Space");
    assert.doesNotMatch(await textOf(sentence(page)), /shredded leaves/);
    await page.keyboard.press("Space");
    await tabTo(page, "Find another material", "Shift+Tab");
    await page.keyboard.type("sawdust");
    await page.keyboard.press("Tab");
    const found = await focused(page);
    await page.keyboard.press("Enter");
    assert.equal(await focused(page), "find-hand", "the field takes the focus of the finding that has gone");
    assert.equal(await page.getByLabel("Find another material").inputValue(), "");
    assert.equal(await page.locator(".hand .line").count(), 3, found);

    await tabTo(page, "Remove Fresh grass", "Shift+Tab");
    await page.keyboard.press("Enter");
    assert.equal(await focused(page), "hand-title", "the heading takes the focus of the line that has gone");
    await page.keyboard.press("Tab");
    assert.equal(await focused(page), "Undo");
    await page.keyboard.press("Enter");
    assert.equal(await inHand(page, "Fresh grass").count(), 1);
  });

  visiting("a heap is started, fed, read, turned, noted; undone and brought back; what Today asks for is done", async (page) => {
    await go(page, "Heaps");
    await press(page, "Start a heap");
    await type(page, "Name", "By the shed");
    await press(page, "Start this heap");
    await told(page, /Started By the shed/);

    await go(page, "Balance");
    await press(page, "Clear all");
    await press(page, "Veg scraps");
    await type(page, "How many, Veg scraps", "3");
    await tabTo(page, "Heap");
    await press(page, "Log this feed");
    await told(page, /^Fed By the shed: 3 .*of veg scraps/);

    await go(page, "Heaps");
    await press(page, "By the shed");
    await page.getByRole("heading", { level: 1, name: "By the shed", exact: true }).waitFor();
    await press(page, "Read");
    await type(page, "Temperature, °C", "52");
    // Tab stops once at the choices of the squeeze test; the arrows go on within.
    await tabUntil(page, () => page.evaluate(() => document.activeElement.name === "read-squeeze"), "the squeeze test");
    await page.keyboard.press("Space");
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("ArrowDown");
    await press(page, "Log the reading");
    await told(page, /^Looked at By the shed: 52 °C.*dusty/);

    await press(page, "Undo");
    await told(page, /^Taken back: Looked at By the shed/);
    await press(page, "Bring back");
    await told(page, /^Looked at By the shed: 52 °C/);
    await press(page, "Turned");
    await told(page, /^Turned By the shed/);
    await press(page, "Note");
    await type(page, "Note", "steams in the morning");
    await press(page, "Log the note");
    await told(page, /steams in the morning/);
    await press(page, "Dismiss");
    await page.locator(".done").waitFor({ state: "detached" });

    await go(page, "Today");
    await page.locator(".today :is(.needs, .need-rest)").waitFor();
    await press(page, /^Watered/);
    await told(page, /^Watered By the shed/);
    await page.getByText(/works by itself/).first().waitFor();

    await go(page, "Logbook");
    const all = await texts(page);
    for (const what of [/^Watered/, /^Note.*steams/, /^Turned/, /^Looked at By the shed: 52/, /^Fed By the shed/, /^Started By the shed/]) assert.ok(all.some((text) => what.test(text)), `${what} in ${all.join("; ")}`);
    await press(page, /^Take back: Turned/);
    await told(page, /^Taken back: Turned/);
  });

  visiting("something is put by and used; a bed is described, planned, spread on", async (page) => {
    await go(page, "Stores");
    await press(page, "Put by");
    await type(page, "What", "straw");
    await page.locator(".found .tile").first().waitFor();
    await tabUntil(page, () => page.evaluate(() => document.activeElement.matches(".found .tile")), "what was found");
    await page.keyboard.press("Enter");
    await press(page, "Put it by");
    await told(page, /^Put by .*straw/);
    await press(page, /^Use .*straw/i);
    await type(page, "How many, used", "½");
    await press(page, "Write the use down");
    await told(page, /^Took ½ bucket of .*straw/);

    await go(page, "Beds");
    await press(page, "Describe a bed");
    await type(page, "Name", "North bed");
    await type(page, "Area, m²", "6");
    await press(page, "Keep this bed");
    await told(page, /Bed described: North bed/);
    await type(page, "How many, compost to share", "100");
    await press(page, "Plan");
    await page.locator(".plan-told").waitFor();
    await press(page, "Spread compost");
    await tabTo(page, "Bed");
    await type(page, "How many, compost", "10");
    await press(page, "Write it down");
    await told(page, /^Spread 10 .* on North bed/);
  });

  visiting("the invented garden is looked at and left, a setting is chosen, the journal is exported, the light is changed", async (page) => {
    await press(page, "Look around in an invented garden");
    await page.getByText("Demo garden, invented").waitFor();
    await press(page, "Leave the demo garden");
    await page.getByText(/^No heap yet\./).waitFor();

    await go(page, "Heaps");
    await press(page, "Start a heap");
    await type(page, "Name", "Bin 1");
    await press(page, "Start this heap");
    await told(page, /Started Bin 1/);

    await go(page, "Settings");
    const units = () => page.evaluate(() => [...document.querySelectorAll("input[type=radio]")].filter((one) => one.name === document.activeElement.name).findIndex((one) => one.checked));
    await tabUntil(page, () => page.evaluate(() => document.activeElement.type === "radio"), "a choice");
    const first = await units();
    await page.keyboard.press("ArrowDown");
    assert.notEqual(await units(), first, "another is chosen");
    await tabTo(page, "Export the journal");
    const [file] = await Promise.all([page.waitForEvent("download"), page.keyboard.press("Enter")]);
    assert.match(file.suggestedFilename(), /^heapwright-.*\.jsonl$/);

    await press(page, "Bright sun", "Space");
    assert.equal(await page.evaluate(() => document.documentElement.dataset.light), "sun");
    await page.keyboard.press("Space");
  });
});
