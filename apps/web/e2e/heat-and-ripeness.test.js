// What the journal tells of a heap: was it hot enough, what to see to before use, is it ready, what is in it, what was kept out of the bin.
import assert from "node:assert/strict";
import { describe } from "node:test";
import { choose, demoHeap, rows, whole } from "./ahead.js";
import { axe, PATIENCE_MS, PHONE, rig, sidewaysScroll, THEMES } from "./harness.js";
import { form, startHeap, told, toHeap } from "./journal.js";
import { openAll, textOf } from "./keeper.js";

const our = rig(PHONE, 600_000);
const { visiting } = our;

const [BEFORE_USE, HEAT, RIPENESS, NUTRIENTS, KEPT_OUT] = [".before-use", ".heat", ".ripeness", ".nutrients", ".kept-out"];

/** Waits until the cards are filled. */
const filled = (page) => page.locator(".heat-headline").waitFor({ timeout: PATIENCE_MS });
/** Waits until the text of a place matches. */
const says = (page, place, pattern) => page.waitForFunction(([selector, source]) => new RegExp(source)
  .test((document.querySelector(selector)?.textContent ?? "").replace(/\s+/g, " ")), [place, pattern.source], { timeout: PATIENCE_MS });

/** A heap with the feed that stands on the page at first. */
async function fedHeap(page) {
  await startHeap(page, "By the shed");
  await toHeap(page, "By the shed");
  await form(page, "Feed");
  await page.getByRole("button", { name: "Log this feed" }).click();
  await page.locator(".in-figures").waitFor();
}

/** From a heap back to all of them. */
const allHeaps = (page) => page.getByRole("link", { name: "All heaps" }).click();

/** Writes a test down on the heap that is looked at: what is typed and what is chosen, by the ids of the fields. */
async function writeTest(page, kind, fields, chosen = {}) {
  await page.getByRole("button", { name: "Write a test down" }).click();
  await choose(page, "Which test", kind);
  for (const [id, value] of Object.entries(fields)) await page.locator(`#${id}`).fill(String(value));
  for (const [id, value] of Object.entries(chosen)) await page.locator(`#${id}`).selectOption({ label: value });
  await page.getByRole("button", { name: "Log the test" }).click();
}

/** Some days ago at noon, as the field for a time has it. */
function noon(daysAgo) {
  const day = new Date(Date.now() - daysAgo * 86_400_000);
  const two = (number) => String(number).padStart(2, "0");
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}T12:00`;
}

describe("in the demo garden", () => {
  visiting("the heat is told at the probe and for the heap, with rules of the place first", async (page) => {
    await demoHeap(page);
    await filled(page);
    assert.match(await textOf(page.locator(".heat-headline")), /^At the probe, .+ of \d+ published rules .+ Estimated share of the heap that has been through it: .+\.$/);
    // The browser of these tests speaks the English of the United States.
    assert.equal(await page.locator("#heat-place").inputValue(), "United States");
    const shown = await page.locator(`${HEAT} .rule-name`).allInnerTexts();
    assert.ok(shown.length >= 3 && shown.every((name) => name.startsWith("United States")), shown.join("; "));
    for (const rule of await page.locator(`${HEAT} .rule`).all()) {
      assert.match(await textOf(rule.locator(".state")), /^(met|not met|does not apply)$/);
      const bars = rule.getByRole("progressbar");
      if (await bars.count()) assert.match(await bars.getAttribute("aria-label"), /^United States: .+: \d+\s% done$/);
    }
    await page.locator(`${HEAT} .rule-more summary`).first().click();
    await says(page, `${HEAT} .rule-more`, /40 °C or more for 5 days .+EPA/);
    await page.locator("#heat-place").selectOption("Germany");
    await says(page, `${HEAT} .rules`, /Germany: Biowaste Ordinance/);
    const german = await page.locator(`${HEAT} .rule-name`).allInnerTexts();
    assert.ok(german.every((name) => /^(Germany|European Union)/.test(name)), german.join("; "));
    await page.locator(`${HEAT} summary`, { hasText: "Rules of other places" }).click();
    await says(page, HEAT, /United States: Process to significantly reduce pathogens/);
    const hours = await rows(page, "How long it was how hot, as a table");
    assert.deepEqual(hours.map(([from]) => from.replace(/\s/g, " ")), [40, 48, 50, 55, 60, 65, 70].map((degrees) => `${degrees} °C`));
    await page.locator(`${HEAT} summary`, { hasText: "Seeds, diseases and larvae" }).click();
    await says(page, HEAT, /heat cannot be trusted with/);
    // The choice is kept on the device.
    assert.equal(await page.evaluate(() => localStorage.getItem("heapwright.rules.1")), "Germany");
  });

  visiting("what went in is told with what to see to before use, and where its nutrients are", async (page) => {
    await demoHeap(page);
    await filled(page);
    const lasting = await page.locator(`${BEFORE_USE} li`).allInnerTexts();
    assert.ok(lasting.length > 0);
    for (const line of lasting) assert.match(line.replace(/\s+/g, " "), /^(This heap had .+ (on|from) \d+ \w+ \d{4}.*: .|.+\. In this heap that goes for .+ (on|from) \d+ \w+ \d{4}.*; .+\.$)/);
    await page.locator(`${NUTRIENTS} summary`).first().click();
    const table = page.locator(`${NUTRIENTS} details table`).first();
    await table.waitFor();
    const cells = () => table.locator("tr").evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent.trim())));
    const elements = await cells();
    assert.deepEqual(elements[0].slice(1), ["N", "P", "K", "Ca", "Mg"]);
    await choose(page, "Named as", "on labels");
    await says(page, NUTRIENTS, /P2O5/);
    const labels = await cells();
    assert.equal(labels.length, elements.length);
    const there = (all) => all.find(([name]) => name === "is there").slice(1).map(Number);
    const [nitrogen, phosphorus] = there(elements);
    const [sameNitrogen, phosphate] = there(labels);
    assert.equal(sameNitrogen, nitrogen);
    // Both are rounded to two digits.
    assert.ok(Math.abs(phosphate / phosphorus / 2.2914 - 1) < 0.06, `${phosphorus} and ${phosphate}`);
    assert.match(await textOf(page.locator(NUTRIENTS)), /How much compost it will be .+ volume .+ to /);
  });

  visiting("what was kept out of the bin is told month by month", async (page) => {
    await demoHeap(page);
    await allHeaps(page);
    await page.locator(`${KEPT_OUT} summary`).click();
    await page.locator(`${KEPT_OUT} table`).first().waitFor();
    const months = await page.locator(`${KEPT_OUT} table`).first().locator("tbody th").allInnerTexts();
    assert.ok(months.length > 3);
    for (const month of months.slice(0, -1)) assert.match(month, /^\d{4}-\d\d$/);
    assert.match(await textOf(page.locator(KEPT_OUT)), /By kind, with what is not known of weights: .+ Method: /);
  });
});

describe("in an empty garden", () => {
  visiting("each card says what is missing and how to come by it", async (page) => {
    await startHeap(page, "By the shed");
    assert.match(await textOf(page.locator(KEPT_OUT)), /^Kept out of the bin By month$/);
    await page.locator(`${KEPT_OUT} summary`).click();
    await says(page, KEPT_OUT, /Nothing was fed yet that would have been waste/);
    await toHeap(page, "By the shed");
    await filled(page);
    assert.match(await textOf(page.locator(HEAT)), /Nobody has read a probe in the core .+ Log a reading/);
    assert.equal(await page.locator(`${HEAT} .rule`).count(), 0);
    assert.match(await textOf(page.locator(BEFORE_USE)), /Nothing that is written down of this heap needs to be seen to/);
    assert.match(await textOf(page.locator(RIPENESS)), /Nothing lies in this heap yet\./);
    assert.match(await textOf(page.locator(NUTRIENTS)), /^Nutrients in it Nothing lies in this heap yet\./);
  });
});

describe("what is logged changes what is told", () => {
  visiting("tests that are written down change the verdict", async (page) => {
    await fedHeap(page);
    await says(page, RIPENESS, /cannot be told: no test says anything yet/);
    assert.match(await textOf(page.locator(`${RIPENESS} .next-test`)), /^Try the bag and the cress/);
    const sheets = page.locator(`${RIPENESS} > .sheet summary`);
    assert.equal(await sheets.count(), 2);
    await sheets.first().click();
    await page.locator(`${RIPENESS} .steps li`).nth(3).waitFor();

    await writeTest(page, "Closed bag", {});
    await page.getByText("This test needs every field").waitFor();
    await page.getByRole("button", { name: "Write a test down" }).click();
    await writeTest(page, "Closed bag", { "bag-days": 7 }, { "bag-swollen": "swollen", "bag-smell": "sour" });
    await told(page, /swollen|bag/i);
    await says(page, ".verdict", /^Not ready yet\./);
    assert.match(await textOf(page.locator(`${RIPENESS} .sign`)), /closed bag \(rest\).+ against 7 days, swollen, sour/);

    await writeTest(page, "Closed bag", { "bag-days": "7,5" }, { "bag-swollen": "flat", "bag-smell": "earthy" });
    await says(page, ".verdict", /^Nearly ready/);
    await writeTest(page, "Seeds", { "seeds-sown": 30, "seeds-up": "2.5", "seeds-control-sown": 30, "seeds-control-up": 29 });
    await page.getByText("Seeds are counted in whole numbers").waitFor();
    await page.locator("#seeds-up").fill("29");
    await page.getByRole("button", { name: "Log the test" }).click();
    await says(page, ".verdict", /^Ready by two independent signs/);
    assert.match(await textOf(page.locator(RIPENESS)), /home tests alone, which are rough.+Weak: .*cress and radish forgive much/);
  });

  visiting("readings of four hot days do not meet the rule of a closed heap in an open one", async (page) => {
    await startHeap(page, "By the shed");
    await toHeap(page, "By the shed");
    await filled(page);
    for (const days of [5, 4, 3, 2, 1]) {
      await form(page, "Read");
      await page.locator("#read-temperature").fill("61");
      await page.locator("#read-when").fill(noon(days));
      await page.getByRole("button", { name: "Log the reading" }).click();
      await page.locator("#read-temperature").waitFor({ state: "detached" });
    }
    await says(page, HEAT, /further reduce pathogens, closed or static aerated pile, 1993 ?not met/);
    assert.match(await textOf(page.locator(".heat-headline")), /^At the probe, /);
    assert.match(await textOf(page.locator(HEAT)), /a closed vessel or insulation all over/);
  });

  visiting("what stays with the heap is told at the moment of feeding, and then on the heap", async (page) => {
    await startHeap(page, "By the shed");
    await toHeap(page, "By the shed");
    await form(page, "Feed");
    const caution = await textOf(page.getByRole("note"));
    assert.match(caution, /^This stays with the heap until it is harvested: .*Grass clippings/i);
    await page.getByRole("button", { name: "Log this feed" }).click();
    await says(page, BEFORE_USE, /This heap had grass clippings, fresh on /);
  });
});

describe("seen by all", () => {
  for (const { name, media } of THEMES) {
    visiting(`axe finds nothing wrong with everything open, and nothing scrolls sideways: ${name}`, async (page) => {
      await page.emulateMedia(media);
      await demoHeap(page);
      await whole(page);
      await page.getByRole("button", { name: "Write a test down" }).click();
      await openAll(page);
      for (const width of [320, 360, 1280]) {
        await page.setViewportSize({ width, height: 740 });
        assert.deepEqual((await axe(page)).violations, [], `${width} px`);
        assert.equal(await sidewaysScroll(page), 0, `${width} px`);
      }
      await allHeaps(page);
      await page.locator(`${KEPT_OUT} summary`).waitFor();
      await openAll(page);
      await page.locator(`${KEPT_OUT} table`).first().waitFor();
      assert.deepEqual((await axe(page)).violations, []);
      assert.equal(await sidewaysScroll(page), 0);
    });
  }
});
