// The places for beds and stores: what is described, spread, put by and used, the plan and its sheet of paper.
import assert from "node:assert/strict";
import { describe } from "node:test";
import { axe, rig, sidewaysScroll, THEMES } from "./harness.js";
import { form, opened, startHeap, texts, told } from "./journal.js";
import { folded, goTo, openAll, plain, textOf } from "./keeper.js";

// Where to keep pictures for looking at; none are kept when it is not set.
const PICTURES = process.env.HEAPWRIGHT_PICTURES;

const our = rig();
const { visiting } = our;

async function picture(page, name) {
  if (PICTURES) await page.screenshot({ path: `${PICTURES}/${name}.png`, fullPage: true });
}

/** Looks at the page with axe, light and dark, at the width of a phone, and for what is wider than it. */
async function seen(page, name) {
  for (const { name: theme, media } of THEMES.filter((theme) => theme.name !== "forced colours")) {
    await page.emulateMedia(media);
    const { violations } = await axe(page);
    assert.deepEqual(violations, [], `${name}, ${theme}`);
    assert.equal(await sidewaysScroll(page), 0, `${name}, ${theme}`);
    await picture(page, `${name}-${theme}`);
  }
  await page.emulateMedia({ colorScheme: null });
}

async function describeBed(page, name, area, crop, more = async () => {}) {
  await goTo(page, "Beds");
  await opened(page);
  await form(page, "Describe a bed");
  await page.getByLabel("Name", { exact: true }).fill(name);
  await page.getByLabel("Area, m²").fill(area);
  await page.getByLabel("What grows there (may be left out)").fill(crop);
  await more();
  await page.getByRole("button", { name: "Keep this bed" }).click();
  await told(page, new RegExp(`Bed described: ${name}`));
}

/** The line of a bed in the plan. */
const planned = (page, name) => page.locator(".plan-bed").filter({ has: page.locator(".line-name", { hasText: name }) });

async function plan(page, amount) {
  await page.getByLabel("How many, compost to share").fill(amount);
  await page.getByRole("button", { name: "Plan", exact: true }).click();
  await page.locator(".plan-told").waitFor();
}

const millimetres = async (bed) => Number((await textOf(bed)).match(/([\d.]+) mm deep/)?.[1] ?? 0);

describe("beds", () => {
  visiting("an empty garden says kindly what to do, and plans nothing", async (page) => {
    await goTo(page, "Beds");
    await page.getByText(/^No bed yet\. Describe one/).waitFor();
    assert.equal(await page.getByRole("button", { name: "Plan", exact: true }).count(), 0);
    assert.equal(await page.getByRole("button", { name: "Spread compost" }).count(), 0);
    await folded(page, "Other uses").click();
    await page.getByText(/Compost tea: none\. .*count like raw manure/).waitFor();
    await openAll(page);
    await seen(page, "beds-empty");
    await form(page, "Describe a bed");
    await page.getByRole("button", { name: "Keep this bed" }).click();
    await page.getByText("Give the bed a name, such as North bed.").waitFor();
    await page.getByLabel("Name", { exact: true }).fill("North");
    await page.getByLabel("Area, m²").fill("much");
    await page.getByRole("button", { name: "Keep this bed" }).click();
    await page.getByText(/^Enter the area, such as 12/).waitFor();
    await openAll(page);
    await seen(page, "bed-being-described");
  });

  visiting("two beds are described and planned; the limit is named with its source; spreading changes the plan; undo brings it back", async (page) => {
    await describeBed(page, "North bed", "3 m x 2 m", "cabbage");
    await describeBed(page, "Herb corner", "2", "carrots", async () => {
      await folded(page, "Soil test").click();
      await page.getByLabel("Phosphorus (P), mg/kg").fill("70");
    });
    assert.match(await textOf(page.locator(".bed-card").filter({ hasText: "North bed" })), /North bed 6 m² .*cabbage .*No compost written down yet/);

    // A second bed of that name is refused.
    await form(page, "Describe a bed");
    await page.getByLabel("Name", { exact: true }).fill("north bed");
    await page.getByLabel("Area, m²").fill("1");
    await page.getByRole("button", { name: "Keep this bed" }).click();
    await page.getByText(/^A bed of this name is there already/).waitFor();
    await page.getByRole("button", { name: "Not now" }).click();

    // Nothing says how much there is.
    await page.getByRole("button", { name: "Plan", exact: true }).click();
    await page.getByText(/^Enter how much compost there is/).waitFor();

    await plan(page, "2000");
    const north = planned(page, "North bed");
    const herbs = planned(page, "Herb corner");
    for (const bed of [north, herbs]) {
      assert.match(await textOf(bed), /(barrows? or )?.*buckets?, [\d.]+ mm deep, [\d.]+ (L|m³)/);
      assert.match(await textOf(bed.locator(".plan-limit")), /^Stops at: (salt|phosphorus|nitrogen|depth|need met)\. /);
      const limit = await textOf(bed.locator(".plan-limit"));
      const [, numbers] = limit.match(/\(sources? ([\d, ]+)\)$/) ?? [];
      assert.ok(numbers, limit);
      for (const number of numbers.split(", ")) {
        assert.ok((await textOf(page.locator(".plan-told > .plan-sources li").nth(Number(number) - 1))).length > 20, `source ${number}`);
      }
    }
    assert.match(await textOf(page.locator(".plan-told")), /The soil of Herb corner holds more phosphorus than crops use/);
    assert.match(await textOf(page.locator(".plan-left")), /are left over/);
    await seen(page, "beds-planned");

    // Of little compost all is given out, and that is no limit of the trade.
    await plan(page, "6");
    assert.match(await textOf(page.locator(".plan-left")), /Nothing is left over/);
    assert.match(await textOf(north), /no more compost/);
    assert.doesNotMatch(await textOf(north), /\(source/);
    assert.equal(await page.locator(".plan-sources").count(), 0);

    await plan(page, "2000");
    const before = await millimetres(north);
    assert.ok(before > 1, `${before} mm`);
    await form(page, "Spread compost");
    await page.getByLabel("Bed", { exact: true }).selectOption({ label: "North bed" });
    await page.getByLabel("How many, compost", { exact: true }).fill("10");
    await page.getByLabel("Measure, compost", { exact: true }).selectOption("L");
    await page.getByLabel("How", { exact: true }).selectOption({ index: 1 });
    await seen(page, "spreading");
    await page.getByRole("button", { name: "Write it down" }).click();
    await told(page, /^Spread 10 L on North bed/);
    await page.locator(".bed-card", { hasText: "North bed" }).getByText(/10\sL, just now/).waitFor();
    const after = await millimetres(north);
    assert.ok(after < before, `${after} mm after, ${before} mm before`);
    await page.getByRole("button", { name: "Undo" }).click();
    await told(page, /^Taken back: Spread/);
    await page.waitForFunction(() => !/just now/.test(document.querySelector(".bed-card").innerText));
    assert.equal(await millimetres(north), before);

    // Beds that are not ticked get none.
    await page.locator(".plan-beds").getByLabel("Herb corner", { exact: true }).uncheck();
    await page.getByRole("button", { name: "Plan", exact: true }).click();
    await page.waitForFunction(() => document.querySelectorAll(".plan-bed").length === 1);

    // All is there after a reload.
    await page.reload();
    await page.locator(".bed-card").first().waitFor();
    assert.equal(await page.locator(".bed-card").count(), 2);
    await goTo(page, "Logbook");
    assert.ok((await texts(page)).some((text) => /^Bed described: North bed/.test(text)));
  });

  visiting("seedlings wait for compost that was not tested, and the harvest for what held raw manure", async (page) => {
    await describeBed(page, "Seed bed", "4", "lettuce");
    await folded(page, "Soon there").click();
    await page.getByLabel("Sown or planted now").check();
    await plan(page, "100");
    assert.match(await textOf(planned(page, "Seed bed")), /none .*maturity not shown.* not tested for maturity; test it, or say under/);
    await folded(page, "About the compost").click();
    await page.getByLabel("Mature?").selectOption({ label: "yes" });
    await page.getByLabel("Did raw manure, droppings or meat go in?").selectOption({ label: "yes" });
    await page.getByLabel("Harvest in how many days").fill("soon");
    await page.getByRole("button", { name: "Plan", exact: true }).click();
    await page.getByText("Enter a number, such as 58 or 3.5.").waitFor();
    await page.getByLabel("Harvest in how many days").fill("60");
    await page.getByRole("button", { name: "Plan", exact: true }).click();
    await planned(page, "Seed bed").getByText(/waiting time/).waitFor();
    await page.getByLabel("Harvest in how many days").fill("200");
    await page.getByRole("button", { name: "Plan", exact: true }).click();
    await page.getByText(/on Seed bed wait 120 days between spreading and harvest/).first().waitFor();
  });

  visiting("the plan alone goes on one sheet, black on white", async (page) => {
    for (let bed = 1; bed <= 6; bed += 1) await describeBed(page, `Bed ${bed}`, String(bed), ["cabbage", "carrots", "lettuce", "tomatoes", "beans", ""][bed - 1]);
    await plan(page, "150");
    await page.evaluate(() => { document.documentElement.dataset.light = "dark"; });
    assert.equal(await page.locator(".paper").isVisible(), false);
    await page.emulateMedia({ media: "print", colorScheme: "dark" });
    assert.equal(await page.locator(".paper").isVisible(), true);
    for (const hidden of [".top", ".places", ".foot", "h1", ".bed-card", ".plan-act", ".plan-print", ".done"]) {
      assert.equal(await page.locator(hidden).first().isVisible(), false, hidden);
    }
    const looks = await page.evaluate(() => {
      const of = (selector) => getComputedStyle(document.querySelector(selector));
      return { cell: of(".paper td").color, line: of(".paper li").color, ground: of("body").backgroundColor, card: of(".plan").backgroundColor };
    });
    assert.deepEqual(looks, { cell: "rgb(0, 0, 0)", line: "rgb(0, 0, 0)", ground: "rgba(0, 0, 0, 0)", card: "rgba(0, 0, 0, 0)" });
    const rows = await page.locator(".paper tbody tr").allInnerTexts();
    assert.equal(rows.length, 6);
    for (const row of rows) assert.match(plain(row), /^Bed \d .*(mm|–) .*☐$/);
    const file = await page.pdf({ format: "A4", ...(PICTURES && { path: `${PICTURES}/paper.pdf` }) });
    const pages = file.toString("latin1").match(/\/Type\s*\/Page\b/g) ?? [];
    assert.equal(pages.length, 1, "one page of A4");
    if (PICTURES) {
      await page.setViewportSize({ width: 720, height: 1000 });
      await picture(page, "paper");
    }
  });
});

describe("stores", () => {
  visiting("what is put by is used, counted, undone, and empties are said kindly", async (page) => {
    await goTo(page, "Stores");
    await page.getByText(/^Nothing is put by yet\./).waitFor();
    assert.equal(await page.getByRole("button", { name: "Use", exact: true }).count(), 0);
    await seen(page, "stores-empty");

    await form(page, "Put by");
    await page.getByRole("button", { name: "Put it by" }).click();
    await page.getByText("Choose a material first.").waitFor();
    await page.getByLabel("What", { exact: true }).fill("straw");
    await page.locator(".found .tile").first().click();
    await page.getByLabel("How many, put by").fill("4");
    await seen(page, "putting-by");
    await page.getByRole("button", { name: "Put it by" }).click();
    await told(page, /^Put by 4 buckets of .*straw/);
    const shelf = page.locator(".shelf");
    assert.match(await textOf(shelf), /straw.*: 4 buckets/i);

    await shelf.getByRole("button", { name: /^Use / }).click();
    await page.waitForFunction(() => document.activeElement?.id === "shelf");
    await page.getByLabel("How many, used").fill("1½");
    await page.getByRole("button", { name: "Write the use down" }).click();
    await told(page, /^Took 1½ buckets of .*straw.* from the stores/);
    await shelf.getByText(/2½\sbuckets/).waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    await shelf.getByText(/4\sbuckets/).waitFor();
    await seen(page, "stores");

    await shelf.getByRole("button", { name: /^Count / }).click();
    await page.getByLabel("How many, counted").fill("3");
    await seen(page, "counting");
    await page.getByRole("button", { name: "Write the count down" }).click();
    await shelf.getByText(/3\sbuckets/).waitFor();

    await page.locator(".log-acts").getByRole("button", { name: "Count", exact: true }).click();
    await page.getByLabel("Nothing is left").check();
    await page.getByRole("button", { name: "Write the count down" }).click();
    await page.getByText(/^All that was put by is used up\./).waitFor();
    assert.equal(await shelf.count(), 0);
    await page.reload();
    await page.getByText(/^All that was put by is used up\./).waitFor();

    // What is used up is not made up for by stores that nobody has.
    await goTo(page, "Balance");
    await page.waitForFunction(() => document.querySelectorAll(".reach .line").length === 1);
    assert.match(await textOf(page.locator(".reach .line")), /water/i);
    assert.equal(await page.getByText("Example stores, invented").count(), 0);
    await goTo(page, "Logbook");
    await page.getByRole("button", { name: /^Take back: Counted nothing/ }).click();
    await told(page, /^Taken back: Counted nothing/);
    await goTo(page, "Balance");
    await page.waitForFunction(() => document.querySelectorAll(".reach .line").length === 2);
    assert.match(await textOf(page.locator(".reach")), /straw/i);
  });

  visiting("a heap's compost is estimated from what went in, its cautions are told, and what is entered goes before the estimate", async (page) => {
    await startHeap(page, "Bin 1");
    await describeBed(page, "North bed", "6", "cabbage");
    await page.getByLabel("Compost of").selectOption({ label: "Bin 1 (active)" });
    await page.getByRole("button", { name: "Plan", exact: true }).click();
    await page.getByText(/^Enter how much compost there is: the journal does not tell for this one/).waitFor();
    await goTo(page, "Balance");
    await page.getByLabel("Find another material").fill("chicken manure");
    await page.locator(".finder .tile").first().click();
    await page.locator(".log-feed").getByRole("button", { name: "Log this feed" }).click();
    await told(page, /^Fed Bin 1: /);
    await goTo(page, "Beds");
    await page.getByLabel("Compost of").selectOption({ label: "Bin 1 (active)" });
    await page.getByRole("button", { name: "Plan", exact: true }).click();
    const plan = page.locator(".plan-told");
    await plan.getByText(/^How much compost there is was estimated from what went in; enter it/).first().waitFor();
    await plan.getByText(/^Raw manure or the like went into the compost: on North bed wait/).first().waitFor();
    await page.getByLabel("How many, compost to share").fill("40");
    await page.getByRole("button", { name: "Plan", exact: true }).click();
    await page.waitForFunction(() => /of 40\sL go to 1 bed/.test(document.querySelector(".plan-told h3").textContent));
    assert.equal(await plan.getByText(/was estimated from what went in/).count(), 0);
    await form(page, "Spread compost");
    await page.getByLabel("From", { exact: true }).selectOption({ label: "Bin 1 (active)" });
    await page.locator(".log-form .told-lines li").first().waitFor();
    await seen(page, "spreading-from-a-heap");
  });
});
