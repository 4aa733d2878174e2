// The page "Balance a feed" as a keeper uses it: tap, type, choose, read; leave and come back; with and without signal.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { describe, test } from "node:test";
import { kept, newProfile, open, PHONE, PROGRAM, ready, rig, startProgram } from "./harness.js";
import {
  answer, answered, count, description, draft, figure, folded, goTo, inHand, inReach, plain, sentence, textOf, tile, underSentence,
  withDraft,
} from "./keeper.js";

const NOTHING = "Nothing in hand yet. Tap what you have.";
const clearAll = (page) => page.getByRole("button", { name: "Clear all" });
const undo = (page) => page.getByRole("button", { name: "Undo" });
const boxes = (page) => page.locator(".reach .line-head input[type=checkbox]");
const water = (page) => page.getByLabel("Water from a can");

const our = rig();
const { visiting } = our;

describe("the first minute", () => {
  visiting("U17 three taps from an empty hand to how many measures of which brown", async (page) => {
    await clearAll(page).tap();
    assert.equal(await textOf(sentence(page)), NOTHING);
    assert.equal(await page.locator(".answer-missed").count(), 0, "nothing has failed yet");
    for (const empty of ["Mix map", "The mixture"]) assert.equal(await page.getByRole("heading", { name: empty }).count(), 0, `${empty} has nothing to show`);
    await tile(page, "Veg scraps").tap();
    await tile(page, "Fresh grass").tap();
    assert.match(await textOf(sentence(page)), /^Put [\d½]+ buckets? of (shredded leaves|cardboard|straw|shredded prunings)( and .+)? with it\.$/);
    assert.match(await textOf(underSentence(page)), /^Chance to lie within all aims, with all that is uncertain: .+\.$/);

    // The sentence answers to each further tap: a heap of grass wants more brown than one bucket of it.
    const one = await answer(page);
    await tile(page, "Fresh grass").tap();
    const two = await answer(page);
    await tile(page, "Fresh grass").tap();
    const three = await answer(page);
    assert.equal(await count(inHand(page, "Fresh grass")).inputValue(), "3");
    assert.notEqual(three.sentence, one.sentence);
    const buckets = (text) => [...text.matchAll(/(\d*)(½?) bucket/g)].reduce((sum, [, whole, half]) => sum + Number(whole) + (half ? 0.5 : 0), 0);
    assert.ok(buckets(three.sentence) > buckets(one.sentence), `${one.sentence} ${three.sentence}`);
    assert.ok(Number.parseFloat(two.figures.Mass) > Number.parseFloat(one.figures.Mass));
  });

  visiting("the recipe is of what is ticked, and the answer says why", async (page) => {
    assert.match(await page.locator(".why").innerText(), /^By itself this is too wet \(84.%; aim 50.% to 60.%\) and too green \(C:N 17; aim 25 to 40\)\.$/);
    const first = await textOf(sentence(page));
    assert.match(first, /shredded leaves/);
    await inReach(page, "Shredded leaves").getByRole("checkbox").uncheck();
    assert.doesNotMatch(await textOf(sentence(page)), /shredded leaves/);
    await inReach(page, "Shredded leaves").getByRole("checkbox").check();
    assert.equal(await textOf(sentence(page)), first);
  });
});

describe("amounts", () => {
  visiting("steppers go up and down, never to nothing, and the figures follow", async (page) => {
    const line = inHand(page, "Fresh grass");
    const before = await answer(page);
    await line.getByRole("button", { name: "One more, Fresh grass" }).tap();
    assert.equal(await count(line).inputValue(), "2");
    const more = await answer(page);
    assert.notDeepEqual(more.figures, before.figures);
    await line.getByRole("button", { name: "One less, Fresh grass" }).tap();
    assert.deepEqual(await answer(page), before);
    for (let taps = 0; taps < 5; taps += 1) await line.getByRole("button", { name: "One less, Fresh grass" }).tap();
    assert.equal(await count(line).inputValue(), "0.25");
  });

  visiting("U15 what people type is understood, and shown as typed", async (page) => {
    const line = inHand(page, "Veg scraps");
    const answers = new Map();
    for (const typed of ["1½", "1 1/2", "1.5", "1,5", "1/2", "3,5 kg", "3.5 kg", "3500 g", "2 buckets"]) {
      await count(line).fill(typed);
      assert.equal(await count(line).inputValue(), typed);
      await answered(page);
      assert.equal(await count(line).getAttribute("aria-invalid"), null, typed);
      assert.equal(await description(count(line)), "", typed);
      answers.set(typed, JSON.stringify(await answer(page)));
      assert.equal((await draft(page)).hand[0].typed, typed);
    }
    for (const same of ["1 1/2", "1.5", "1,5"]) assert.equal(answers.get(same), answers.get("1½"), same);
    for (const same of ["3.5 kg", "3500 g"]) assert.equal(answers.get(same), answers.get("3,5 kg"), same);
    assert.equal(new Set(answers.values()).size, 4, "1½, 1/2, 3,5 kg and 2 buckets all differ");
  });

  visiting("a weight alone in hand, with nothing to add, is the mass of the mixture", async (page) => {
    await inHand(page, "Fresh grass").getByRole("button", { name: "Remove Fresh grass" }).tap();
    for (const box of await boxes(page).all()) await box.uncheck();
    await water(page).uncheck();
    await count(inHand(page, "Veg scraps")).fill("3,5 kg");
    assert.equal(await figure(page, "Mass"), "3.5 kg");
    await count(inHand(page, "Veg scraps")).fill("1/2");
    await inHand(page, "Veg scraps").getByLabel("Measure").selectOption("kg");
    assert.equal(await figure(page, "Mass"), "500 g");
    await inHand(page, "Veg scraps").getByRole("button", { name: "One more" }).tap();
    assert.equal(await figure(page, "Mass"), "1 kg");
  });

  visiting("steppers keep a unit that was typed", async (page) => {
    const line = inHand(page, "Veg scraps");
    await count(line).fill("3,5 kg");
    await line.getByRole("button", { name: "One more" }).tap();
    assert.equal(await count(line).inputValue(), "4.5 kg");
    await tile(page, "Veg scraps").tap();
    assert.equal(await count(line).inputValue(), "5.5 kg");
  });

  visiting("measure and condition are chosen, change the figures, and go back with Undo", async (page) => {
    const grass = inHand(page, "Fresh grass");
    const [unit, condition] = [grass.getByLabel("Measure"), grass.getByLabel("Condition")];
    const before = await answer(page);
    await unit.selectOption("barrow");
    const barrow = await answer(page);
    assert.notDeepEqual(barrow, before);
    await condition.selectOption("wet");
    const wet = await answer(page);
    assert.notDeepEqual(wet, barrow);
    await condition.selectOption("wilted");
    const wilted = await answer(page);
    assert.notDeepEqual(wilted, wet);
    await undo(page).tap();
    assert.equal(await condition.inputValue(), "wet");
    assert.deepEqual(await answer(page), wet);
    await undo(page).tap();
    assert.equal(await condition.inputValue(), "");
    await undo(page).tap();
    assert.equal(await unit.inputValue(), "bucket");
    assert.deepEqual(await answer(page), before);
  });

  visiting("what cannot be used is said at its field, stays typed, and the rest still answers", async (page) => {
    const line = inHand(page, "Fresh grass");
    await count(inHand(page, "Veg scraps")).fill("4");
    for (const [typed, told] of [["-2", /\S/], ["abc", /\S/], ["1,234", /1234|1\.234|1,234/], ["0", /\S/], ["1e999", /\S/], ["", /Enter a number/]]) {
      await count(line).fill(typed);
      assert.equal(await count(line).inputValue(), typed);
      await answered(page);
      assert.equal(await count(line).getAttribute("aria-invalid"), "true", typed);
      const said = await description(count(line));
      assert.match(said, told, typed);
      assert.match(said, /Not counted until this is mended\.$/, typed);
      assert.equal(await line.locator(".fault").isVisible(), true, typed);
      assert.match(await textOf(underSentence(page)), /^Not all that is in hand is counted\. Chance/, typed);
      assert.match(await textOf(sentence(page)), /^Put .+ with it\.$/, `scraps alone are answered while grass is ${typed}`);
    }
    const alone = await answer(page);
    await line.getByRole("button", { name: "Remove" }).tap();
    alone.under = alone.under.replace("Not all that is in hand is counted. ", "");
    assert.deepEqual(await answer(page), alone, "a line that cannot be read counts as one that is not there");
    await undo(page).tap();
    await count(line).fill("1");
    await answered(page);
    assert.equal(await count(line).getAttribute("aria-invalid"), null);
    assert.equal(await description(count(line)), "");
    assert.notDeepEqual(await answer(page), alone);
  });

  visiting("what does not belong in a heap says so at its line, and why without a tap", async (page) => {
    await page.getByLabel("Find another material").fill("dog poo");
    await page.locator(".finder .tile").first().click();
    await answered(page);
    const line = page.locator(".hand .line").filter({ hasText: /best kept out of a home heap/i });
    assert.match(await textOf(line), /dog/i);
    assert.equal(await page.locator(".hand .note").count(), 1, "the others have none");
    await page.locator(".cautions details[open]").getByText(/roundworm/).waitFor();
    assert.ok(await page.locator(".cautions details:not([open])").count() > 0, "what else there is stays folded");
  });

  visiting("a hand with nothing but what cannot be read is not called empty", async (page) => {
    await count(inHand(page, "Veg scraps")).fill("abc");
    await count(inHand(page, "Fresh grass")).fill("-1");
    assert.equal(await textOf(sentence(page)), "No amount in hand can be read yet. Mend the one that is marked.");
  });

  visiting("how much there is in store bounds the recipe", async (page) => {
    for (const name of ["Cardboard", "Straw", "Shredded prunings"]) await inReach(page, name).getByRole("checkbox").uncheck();
    await count(inHand(page, "Fresh grass")).fill("6");
    const leaves = inReach(page, "Shredded leaves");
    const [, whole, half] = (await textOf(sentence(page))).match(/(\d*)(½?) buckets? of shredded leaves/);
    const asked = Number(whole) + (half ? 0.5 : 0);
    assert.ok(asked > 1);
    await count(leaves).fill("1");
    assert.match(await textOf(underSentence(page)), /^Nearest: Put 1 bucket of shredded leaves/);
    await count(leaves).fill("");
    assert.match(await textOf(sentence(page)), new RegExp(`Put ${whole}${half} buckets`));
    await count(leaves).fill("none");
    await answered(page);
    assert.equal(await count(leaves).getAttribute("aria-invalid"), "true");
    assert.match(await description(count(leaves)), /Not counted/);
  });
});

describe("the hand", () => {
  visiting("undo takes back the last change, and as many as were made", async (page) => {
    const before = await answer(page);
    await tile(page, "Coffee grounds").tap();
    await tile(page, "Bread").tap();
    await inHand(page, "Veg scraps").getByRole("button", { name: "Remove" }).tap();
    await clearAll(page).tap();
    assert.equal(await page.locator(".hand .line").count(), 0);
    for (let taps = 0; taps < 4; taps += 1) await undo(page).tap();
    assert.deepEqual(await answer(page), before);
    assert.deepEqual(await page.locator(".hand .line-name").allInnerTexts(), ["Veg scraps", "Fresh grass"]);
    assert.equal(await undo(page).getAttribute("aria-disabled"), "true");
  });

  visiting("clearing an empty hand and undoing nothing do nothing", async (page) => {
    await undo(page).tap({ force: true });
    assert.equal(await page.locator(".hand .line").count(), 2);
    await clearAll(page).tap();
    await clearAll(page).tap({ force: true });
    await undo(page).tap();
    assert.equal(await page.locator(".hand .line").count(), 2);
  });

  for (const [typed, name] of [["zucchini", /courgette|zucchini/i], ["sawdust", /sawdust/i], ["peelngs", /potato peel/i]]) {
    visiting(`the search finds what is called ${typed}, and puts it in hand`, async (page) => {
      const field = page.getByLabel("Find another material");
      await field.fill(typed);
      const finder = page.locator(".hand .finder");
      const names = await finder.getByRole("button").allInnerTexts();
      assert.ok(names.length > 0 && names.length <= 6, `${names.length} findings`);
      assert.match(await textOf(finder.getByRole("status")), /^\d+ found$/);
      const wanted = names.findIndex((one) => name.test(one));
      assert.ok(wanted >= 0, names.join(", "));
      const before = await answer(page);
      await finder.getByRole("button").nth(wanted).tap();
      assert.equal(await page.locator(".hand .line").count(), 3);
      assert.equal(await field.inputValue(), "");
      assert.equal(await finder.getByRole("button").count(), 0);
      assert.notDeepEqual(await answer(page), before);
    });
  }

  visiting("a search that finds nothing says so", async (page) => {
    await page.getByLabel("Find another material").fill("xyzzy");
    assert.equal(await textOf(page.locator(".hand .finder").getByRole("status")), "Nothing is called that. Try a plainer word.");
  });
});

describe("what is in reach", () => {
  visiting("without any brown the aim is not met: by how much, what is nearest, what would help", async (page) => {
    const first = await answer(page);
    for (const box of await boxes(page).all()) await box.uncheck();
    assert.match(await textOf(sentence(page)), /^Nothing in reach gets there: .*too (wet|green).*aim at (most|least) .+\.$/);
    assert.match(await textOf(underSentence(page)), /^Nearest: /);
    assert.match(await textOf(page.locator(".ways")), /would help: dry leaves/);
    assert.equal(await page.locator(".answer-missed").count(), 1);
    for (const box of await boxes(page).all()) await box.check();
    assert.deepEqual(await answer(page), first);
    assert.equal(await page.locator(".answer-missed").count(), 0);
  });

  visiting("water is used when it is there, and not when it is not", async (page) => {
    await clearAll(page).tap();
    await page.getByLabel("Find another material").fill("chicken manure");
    await page.locator(".hand .finder").getByRole("button").first().tap();
    await tile(page, "Dry leaves").tap();
    await count(inHand(page, "Dry leaves")).fill("6");
    const wet = await textOf(page.locator(".answer"));
    assert.match(wet, /\d L of water/);
    await water(page).uncheck();
    assert.doesNotMatch(await textOf(page.locator(".answer")), /of water/);
    await water(page).check();
    assert.equal(await textOf(page.locator(".answer")), wet);
  });

  visiting("something else is put in reach, used, and taken away again", async (page) => {
    for (const box of await boxes(page).all()) await box.uncheck();
    await count(inHand(page, "Fresh grass")).fill("6");
    await page.getByLabel("Add something to what is in reach").fill("shredded leaves");
    const finding = page.locator(".reach .finder").getByRole("button").first();
    await finding.tap();
    assert.equal(await page.locator(".reach .line-head").count(), 4, "what is in reach already is not put there twice");
    assert.equal(await inReach(page, "Shredded leaves").getByRole("checkbox").isChecked(), true, "but ticked");
    await inReach(page, "Shredded leaves").getByRole("checkbox").uncheck();
    await page.getByLabel("Add something to what is in reach").fill("sawdust");
    await finding.tap();
    const line = page.locator(".reach .line").nth(4);
    assert.match(await textOf(page.locator(".answer")), /Put [\d½]+ buckets? of .*sawdust/);
    assert.equal(await textOf(line.locator(".badge")), "1", "its number on the map");
    await line.getByRole("button", { name: "Remove" }).tap();
    assert.match(await textOf(sentence(page)), /^Nothing in reach gets there/);
  });

  visiting("another recipe is looked at: sentence, map and figures are its own", async (page) => {
    const ways = page.locator(".way");
    assert.ok((await ways.count()) > 1);
    const first = await answer(page);
    const map = await page.locator(".map figcaption p").innerText();
    const line = await textOf(ways.nth(1).locator(".way-line"));
    await ways.nth(1).tap();
    await answered(page);
    assert.equal(await ways.nth(1).getAttribute("aria-pressed"), "true");
    assert.equal(await ways.nth(0).getAttribute("aria-pressed"), "false");
    const second = await answer(page);
    assert.equal(second.sentence, line);
    assert.notDeepEqual(second.figures, first.figures);
    assert.notEqual(await page.locator(".map figcaption p").innerText(), map);
    // Map and figures tell of one mixture.
    assert.match(await textOf(page.locator(".map figcaption p")), new RegExp(`^The mixture is at C:N ${second.figures["C:N"]}, moisture ${second.figures.Moisture};`));
    await ways.nth(0).tap();
    assert.deepEqual(await answer(page), first);
  });
});

describe("settings", () => {
  const openSettings = (page) => goTo(page, "Settings");

  visiting("US units show pounds and gallons of the same mixture, and offer them", async (page) => {
    const metric = await answer(page);
    await openSettings(page);
    await page.getByLabel("Pounds and US gallons").check();
    const us = await answer(page);
    assert.equal(us.sentence, metric.sentence, "buckets are buckets");
    assert.match(us.figures.Mass, / lb$/);
    assert.match(us.figures.Volume, / gal$/);
    const [kilograms, pounds] = [metric, us].map((one) => Number.parseFloat(one.figures.Mass));
    assert.ok(Math.abs(pounds * 0.45359237 - kilograms) < 0.2, `${kilograms} kg, ${pounds} lb`);
    const units = inHand(page, "Fresh grass").getByLabel("Measure");
    assert.deepEqual((await units.locator("option").allInnerTexts()).slice(-2), ["gal", "lb"]);
    await units.selectOption("gal");
    assert.equal(await units.inputValue(), "gal");
    await openSettings(page);
    assert.match(await textOf(page.locator(".shelf", { hasText: "bucket" }).first()), /[\d.]+ gal, as is usual/);
    await page.getByLabel("Kilograms and litres").check();
    await goTo(page, "Balance");
    assert.equal(await units.inputValue(), "gal", "what was chosen stays chosen");
  });

  visiting("the aim is the keeper's; what cannot be is refused in words and the usual one is taken", async (page) => {
    const before = await answer(page);
    await openSettings(page);
    const [low, high, dry, wet, air] = ["Lowest C:N", "Highest C:N", "Lowest moisture, %", "Highest moisture, %", "Least air space, %"].map((name) => page.getByLabel(name));
    await wet.fill("55");
    assert.notDeepEqual(await answer(page), before);
    assert.match(await textOf(page.locator(".map figcaption p")), /moisture 50 % to 55 %\.$/);
    await openSettings(page);
    await wet.fill("");
    assert.deepEqual(await answer(page), before);

    for (const [field, typed] of [[low, "abc"], [low, "-3"], [low, "0"], [dry, "120"], [wet, "1e9"], [air, "NaN"], [high, "inf"]]) {
      await openSettings(page);
      await field.fill(typed);
      await answered(page);
      assert.equal(await field.getAttribute("aria-invalid"), "true", typed);
      assert.match(await description(field), /Enter a number between 1 and \d+\./);
      assert.deepEqual(await answer(page), before, `${typed} leaves the usual aim`);
      await openSettings(page);
      await field.fill("");
    }
    // One above the other.
    await low.fill("60");
    await answered(page);
    assert.match(await page.locator(".settings").innerText(), /The lower limit must not be above the higher one; the usual aim is taken\./);
    assert.deepEqual(await answer(page), before);
    // Possible, yet nothing gets there.
    await openSettings(page);
    await low.fill("");
    await dry.fill("1");
    await wet.fill("2");
    await goTo(page, "Balance");
    assert.match(await textOf(sentence(page)), /^Nothing in reach gets there: .*too wet/);
  });

  visiting("light can be chosen against the device's, and all can begin again", async (page) => {
    const paper = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    const device = await paper();
    await openSettings(page);
    await page.getByLabel("Dark", { exact: true }).check();
    assert.notEqual(await paper(), device);
    await page.getByLabel("Bright sun").check();
    // Whiter than the paper of a light device: it is for reading in the open.
    assert.equal(await paper(), "rgb(255, 255, 255)");
    await goTo(page, "Balance");
    await clearAll(page).tap();
    await openSettings(page);
    await page.getByRole("button", { name: "Start the balance again with the example" }).tap();
    await goTo(page, "Balance");
    assert.match(await textOf(sentence(page)), /^Put /);
    await undo(page).tap();
    assert.equal(await textOf(sentence(page)), NOTHING);
  }, { colorScheme: "light" });
});

describe("keeping", () => {
  visiting("R1 loading again keeps all that was tapped, typed, ticked and set", async (page) => {
    await tile(page, "Coffee grounds").tap();
    await count(inHand(page, "Coffee grounds")).fill("1½ gal");
    await count(inHand(page, "Veg scraps")).fill("abc");
    await inHand(page, "Fresh grass").getByLabel("Condition").selectOption("wilted");
    await inHand(page, "Fresh grass").getByLabel("Measure").selectOption("trug");
    await inReach(page, "Straw").getByRole("checkbox").uncheck();
    await count(inReach(page, "Cardboard")).fill("3");
    await water(page).uncheck();
    await goTo(page, "Settings");
    await page.getByLabel("Pounds and US gallons").check();
    await page.getByLabel("Highest C:N").fill("38");
    const before = await answer(page);
    const keptBefore = await draft(page);
    await page.reload();
    await ready(page);
    assert.deepEqual(await draft(page), keptBefore);
    assert.deepEqual(await answer(page), before);
    assert.equal(await count(inHand(page, "Coffee grounds")).inputValue(), "1½ gal");
    assert.equal(await count(inHand(page, "Veg scraps")).inputValue(), "abc");
    assert.equal(await inHand(page, "Fresh grass").getByLabel("Condition").inputValue(), "wilted");
    assert.equal(await inHand(page, "Fresh grass").getByLabel("Measure").inputValue(), "trug");
    assert.equal(await inReach(page, "Straw").getByRole("checkbox").isChecked(), false);
    assert.equal(await water(page).isChecked(), false);
    await goTo(page, "Settings");
    assert.equal(await page.getByLabel("Highest C:N").inputValue(), "38");
  });

  for (const [what, change] of [
    ["no JSON", () => "{\"hand\": [1, 2"],
    ["JSON of something else", () => "[1, null, {\"a\": \"b\"}]"],
    ["fields missing", ({ hand }) => ({ hand })],
    ["empty", () => ""],
    ["a number too large", (page) => JSON.stringify(page).replace(/"chosen":\d+/, "\"chosen\":1e400")],
  ]) {
    visiting(`a draft that cannot be read (${what}) opens as a first visit`, async (page) => {
      const first = await answer(page);
      await tile(page, "Bread").tap();
      await withDraft(page, change);
      assert.deepEqual(await answer(page), first);
    });
  }

  visiting("a draft with nonsense inside opens, says what cannot be used, and answers with the rest", async (page) => {
    await withDraft(page, (page) => ({
      ...page,
      hand: [...page.hand, { ...page.hand[0], material: "moon_dust" }, { ...page.hand[1], unit: "thimble" }, { ...page.hand[1], condition: "enchanted", typed: "\u0000\u202e".repeat(300) }],
      reach: [...page.reach, { ...page.reach[0], material: "moon_dust" }, { ...page.reach[1], unit: "thimble" }, { ...page.reach[2], condition: "enchanted" }],
      measures: { thimble: "2 ml", bucket: "1e999 L" },
      chosen: 1_000_000,
      next_key: 0,
    }));
    assert.match(await textOf(sentence(page)), /^Put .+ with it\.$/);
    await answered(page);
    assert.ok((await page.locator(".hand [aria-invalid=true]").count()) >= 3);
    assert.ok((await page.locator(".reach [aria-invalid=true]").count()) >= 2);
    await tile(page, "Bread").tap();
    assert.equal(await inHand(page, "Bread").count(), 1);
    await clearAll(page).tap();
    assert.equal(await page.locator(".hand .line").count(), 0);
  });

  for (const [what, refuse] of [
    ["refuses to write", () => { Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); }; }],
    ["refuses it altogether", () => { Object.defineProperty(window, "localStorage", { get() { throw new DOMException("no", "SecurityError"); } }); }],
  ]) {
    test(`R4 a browser that ${what} is said, and everything works until one leaves`, async () => {
      const context = await our.browser.newContext(PHONE);
      const page = await context.newPage();
      await page.addInitScript(refuse);
      await open(page, our.program.address);
      const told = page.getByRole("status").filter({ hasText: "This browser does not let the page keep what you type" });
      assert.equal(await told.count(), 1);
      const before = await answer(page);
      await tile(page, "Fresh grass").tap();
      assert.notDeepEqual(await answer(page), before);
      await context.close();
    });
  }

  visiting("a browser that keeps says nothing", async (page) => {
    assert.equal(await page.getByText("This browser does not let").count(), 0);
  });
});

describe("without signal", () => {
  test("U14 once visited, the page opens and answers with nobody there, and keeps what is done then", async () => {
    const profile = await newProfile();
    const program = await startProgram();
    try {
      let context = await profile.open(PHONE);
      let page = context.pages()[0];
      await open(page, program.address);
      await kept(page);
      await tile(page, "Bread").tap();
      const before = await answer(page);
      await program.kill();
      await page.reload();
      await ready(page);
      assert.deepEqual(await answer(page), before);
      await clearAll(page).tap();
      await tile(page, "Veg scraps").tap();
      await tile(page, "Fresh grass").tap();
      assert.match(await textOf(sentence(page)), /^Put [\d½]+ buckets? of /);
      const offline = await answer(page);
      await context.close();

      context = await profile.open(PHONE);
      page = context.pages()[0];
      await open(page, program.address);
      assert.deepEqual(await answer(page), offline);
      await context.close();
    } finally {
      await program.kill();
      await profile.remove();
    }
  });
});

describe("R12 the page and the program give one answer", () => {
  const GARDEN = JSON.parse(readFileSync(new URL("../../../demo/garden.json", import.meta.url), "utf8"));
  // Each hand as the page keeps it and as one says it to the program.
  const QUESTIONS = [
    [["mixed_vegetable_scraps", "", "1", "caddy"], ["grass_clippings_fresh", "", "1", "bucket"]],
    [["grass_clippings_fresh", "", "5", "bucket"]],
    [["coffee_grounds", "", "1½", "bucket"], ["mixed_fruit_scraps", "", "3,5 kg", "caddy"]],
    [["grass_clippings_fresh", "wilted", "2", "barrow"], ["chicken_litter_bedding", "", "1", "bucket"]],
    [["bread", "", "2", "kg"], ["egg_shells", "", "1", "handful"], ["tea_leaves", "", "3", "mug"]],
    [["dry_leaves_mixed", "", "4", "bucket"], ["weeds_green", "wet", "0.25", "L"]],
    [["hedge_trimmings_fresh", "", "60", "L"]],
  ];
  const question = (hand, asked) => ({
    have: hand.map(([material, condition, typed, unit]) => ({
      material, amount: /\p{L}/u.test(typed) ? typed : `${typed} ${unit}`, ...(condition && { condition }),
    })),
    ...asked,
  });

  for (const hand of QUESTIONS) {
    visiting(`R12 ${hand.map(([material, condition, typed, unit]) => plain(`${condition} ${material} ${typed} ${unit}`)).join(", ")}`, async (page) => {
      await withDraft(page, (draft) => ({ ...draft, hand: hand.map(([material, condition, typed, unit], index) => ({ key: 100 + index, material, condition, typed, unit })), next_key: 200 }));
      const asked = {
        reach: GARDEN.stores.map(({ material, condition, amount, scoop }) => ({ material, max: amount, step: scoop, ...(condition && { condition }) })),
        water: { step: "0.5 l" },
        objective: "best_centred",
        garden: GARDEN,
      };
      const file = JSON.stringify(question(hand, asked));
      const run = (...options) => execFileSync(PROGRAM, ["balance", ...options, "--file", "-"], { encoding: "utf8", input: file });
      const text = plain(run());
      const json = JSON.parse(run("--json"));
      const shown = await answer(page);

      // The same sentences, to the last letter.
      const why = await textOf(page.locator(".why"));
      assert.ok(text.includes(why), `${why}\n${text}`);
      const sentences = [shown.sentence, shown.under.replace(/^Nearest: /, "").replace(/^Chance to lie within all aims, with all that is uncertain:/, "chance to lie within all aims:")];
      for (const one of sentences) assert.ok(text.includes(one), `${one}\n${text}`);
      for (const way of await page.locator(".way").all()) {
        const [title, line, chance] = (await way.innerText()).split("\n").map(plain);
        const start = text.indexOf(`${title.replace(/^✓ /, "")} ${line} `);
        assert.ok(start >= 0, `${title} ${line}\n${text}`);
        assert.ok(text.slice(start + line.length).includes(chance));
      }

      assert.deepEqual(await page.locator(".way-line").allInnerTexts().then((all) => all.map(plain)), json.recipes.length > 1 ? json.recipes.map((recipe) => plain(recipe.sentence)) : []);

      // The same figures, to the last digit shown, from the JSON and with their ranges from the text.
      const mix = (json.recipes[0] ?? json.conflict.nearest).result;
      const whole = (value) => value.toFixed(0);
      assert.equal(shown.figures["C:N"], mix.cn_ratio.value < 10 ? String(Number(mix.cn_ratio.value.toPrecision(2))) : whole(mix.cn_ratio.value));
      assert.equal(shown.figures.Moisture, `${whole(mix.moisture_pct.value)} %`);
      assert.equal(shown.figures["Air space"], `${whole(mix.free_air_space_pct.value)} %`);
      for (const [name, row] of [["C:N", "C:N"], ["Moisture", "moisture"], ["Air space", "free air space"], ["Mass", "mass"], ["Volume", "volume"]]) {
        const place = page.locator(".figure").filter({ has: page.locator(".figure-name", { hasText: new RegExp(`^${name}$`) }) });
        await place.locator("summary").first().click();
        const range = await textOf(place.locator("strong").first());
        // A figure without a spread has no range in the text.
        const said = range === shown.figures[name] ? `${row} ${range}` : `${row} ${shown.figures[name]} ${range}`;
        assert.ok(text.includes(said), `${said}\n${text}`);
      }
    });
  }
});
