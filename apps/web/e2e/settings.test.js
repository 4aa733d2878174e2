// Settings: vessels and materials that are weighed step by step, the garden's place, clock and units, what keeps the journal,
// and a new version that waits.
import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { kept, open, PHONE, ready, rig, startProxy, until } from "./harness.js";
import { form, note, onTheDevice, opened, startHeap, texts, toHeap, told } from "./journal.js";
import { answer, goTo, plain, textOf, withDraft } from "./keeper.js";

const our = rig();
const bodies = async (page, kind) => (await onTheDevice(page)).lines.map((line) => JSON.parse(line))
  .filter((event) => event.kind === kind).map((event) => event.body);
const press = (page, name) => page.getByRole("button", { name, exact: true }).click();
const vessel = (page, name) => page.locator(".settings .shelf").filter({ has: page.locator(".line-name", { hasText: new RegExp(`^${name}$`) }) });

async function weigh(page, which, empty, water) {
  await goTo(page, "Settings");
  await opened(page);
  await press(page, "Weigh a vessel");
  await page.getByLabel("Which vessel?").selectOption(which);
  await page.getByRole("textbox", { name: /^Weight empty/ }).fill(empty);
  await press(page, "Next");
  await page.getByRole("textbox", { name: /^Weight full of water/ }).fill(water);
}

describe("weighing", () => {
  our.visiting("a bucket, empty and full of water: what it holds goes into the journal and changes the answer; undo takes it back", async (page) => {
    const before = await answer(page);
    await weigh(page, "bucket", "0,8", "5.8");
    await page.getByText("It holds 5 L.").waitFor();
    await press(page, "Save what it holds");
    await told(page, /bucket/i);
    await page.getByRole("heading", { name: /^Step 3 of 3/ }).waitFor();
    assert.deepEqual(await bodies(page, "measure_defined"), [{ measure: "bucket", volume_l: 5 }]);
    assert.match(await textOf(vessel(page, "bucket")), /^bucket 5 L, found on \d+ \w+ \d{4}$/i);
    assert.notDeepEqual(await answer(page), before);
    assert.ok(await page.locator(".reach .line").count() > 1, "the example is still in reach");
    await page.getByText("Example stores, invented").waitFor();
    await page.reload();
    await ready(page);
    await opened(page);
    assert.notDeepEqual(await answer(page), before, "it is in the journal, not in the page");
    await goTo(page, "Logbook");
    await page.getByRole("button", { name: /^Take back/ }).first().click();
    await told(page, /^Taken back/);
    assert.deepEqual(await answer(page), before);
  });

  our.visiting("a material in it: its weight goes into the journal", async (page) => {
    await weigh(page, "bucket", "0.8", "12.8");
    await press(page, "Save what it holds");
    await page.getByRole("heading", { name: /^Step 3 of 3/ }).waitFor();
    await press(page, "Save this weighing");
    await page.getByText("Choose what is in the vessel first.").waitFor();
    await page.getByLabel("What is in it?").fill("dry leaves");
    await page.locator(".found .tile").first().click();
    await page.getByRole("textbox", { name: "Weight full, kg" }).fill("2");
    await page.getByText("That is 100 kg in a cubic metre.").waitFor();
    await press(page, "Save this weighing");
    await told(page, /leaves/i);
    const [measured] = await bodies(page, "material_measured");
    assert.match(measured.material, /leaves/);
    assert.deepEqual(measured.weighed_measure, { measure: { count: 1, unit: "bucket" }, full_kg: 2, empty_kg: 0.8 });
  });

  our.visiting("steppers go by a tenth, Back keeps what was entered, nonsense is told and nothing is written", async (page) => {
    await goTo(page, "Settings");
    await press(page, "Weigh a vessel");
    await press(page, "Next");
    await page.getByText("Enter a weight, such as 0.8.").waitFor();
    await page.getByRole("textbox", { name: /^Weight empty/ }).fill("much");
    await press(page, "Next");
    await page.getByText("Enter a number, such as 58 or 3.5.").waitFor();
    await page.getByRole("textbox", { name: /^Weight empty/ }).fill("");
    for (let tap = 0; tap < 3; tap += 1) await press(page, "More, Weight empty, kg");
    await press(page, "Less, Weight empty, kg");
    assert.equal(await page.getByRole("textbox", { name: /^Weight empty/ }).inputValue(), "0.2");
    await press(page, "Next");
    await page.getByRole("textbox", { name: /^Weight full of water/ }).fill("0.1");
    await press(page, "Save what it holds");
    await page.getByText(/^Full must weigh more than empty/).waitFor();
    await press(page, "Back");
    assert.equal(await page.getByRole("textbox", { name: /^Weight empty/ }).inputValue(), "0.2");
    assert.deepEqual((await onTheDevice(page)).lines, []);
  });

  our.visiting("a second vessel counts by its own weights, whatever was entered for the first", async (page) => {
    await weigh(page, "bucket", "0.8", "");
    await page.getByText("I know what it holds").click();
    await page.getByRole("textbox", { name: /^It holds, / }).fill("9");
    await page.getByText("It holds 9 L.").waitFor();
    await page.getByRole("textbox", { name: /^Weight full of water/ }).fill("10.8");
    await page.getByText("It holds 10 L.").waitFor();
    await page.getByRole("textbox", { name: /^It holds, / }).fill("9");
    await press(page, "Save what it holds");
    await page.getByRole("heading", { name: /^Step 3 of 3/ }).waitFor();
    await press(page, "Not now");
    await press(page, "Weigh a vessel");
    const empty = page.getByRole("textbox", { name: /^Weight empty/ });
    assert.equal(await empty.inputValue(), "");
    await empty.fill("1");
    await page.getByLabel("Which vessel?").selectOption("barrow");
    assert.equal(await empty.inputValue(), "", "a weight is that of one vessel");
    await empty.fill("10");
    await press(page, "Next");
    const water = page.getByRole("textbox", { name: /^Weight full of water/ });
    assert.equal(await water.inputValue(), "");
    await water.fill("90");
    await page.getByText("It holds 80 L.").waitFor();
    await press(page, "Save what it holds");
    await told(page, /barrow/i);
    assert.deepEqual(await bodies(page, "measure_defined"), [{ measure: "bucket", volume_l: 9 }, { measure: "barrow", volume_l: 80 }]);
  });

  our.visiting("a bucket that holds a bathtub is doubted before it is saved, and saved if one says so", async (page) => {
    const doubt = page.getByText("Such a vessel usually holds about 10 L: check the figures.");
    await weigh(page, "bucket", "0.8", "900");
    await page.getByText("It holds 899 L.").waitFor();
    await doubt.waitFor();
    await page.getByRole("textbox", { name: /^Weight full of water/ }).fill("10.8");
    await doubt.waitFor({ state: "detached" });
    await page.getByRole("textbox", { name: /^Weight full of water/ }).fill("1.8");
    await doubt.waitFor();
    await press(page, "Save what it holds");
    await told(page, /bucket/i);
    assert.deepEqual(await bodies(page, "measure_defined"), [{ measure: "bucket", volume_l: 1 }]);
  });

  our.visiting("in pounds and gallons; or as it is known", async (page) => {
    await goTo(page, "Settings");
    await page.getByLabel("Pounds and US gallons").check();
    await weigh(page, "bucket", "2", "");
    await page.getByText("I know what it holds").click();
    await page.getByRole("textbox", { name: "It holds, US gallons" }).fill("5");
    await press(page, "Save what it holds");
    await told(page, /bucket/i);
    const [{ volume_l }] = await bodies(page, "measure_defined");
    assert.ok(Math.abs(volume_l - 18.927) < 0.001, `${volume_l} L`);
  });

  our.visiting("what an earlier version kept on the device only is shown, and put into the journal", async (page) => {
    await withDraft(page, (draft) => ({ ...draft, measures: { bucket: "9 L", barrow: "lots" } }));
    await goTo(page, "Settings");
    await opened(page);
    await page.getByText("These were typed on this device and are not in your journal yet.").waitFor();
    await press(page, "Put them into the journal");
    await page.locator(".settings .fault").filter({ hasText: /\S/ }).first().waitFor();
    assert.deepEqual((await onTheDevice(page)).lines, [], "all or nothing");
    await withDraft(page, (draft) => ({ ...draft, measures: { bucket: "9 L" } }));
    await goTo(page, "Settings");
    await opened(page);
    const offered = page.getByText("These were typed on this device");
    await offered.waitFor();
    await press(page, "Look around in an invented garden");
    await page.getByText("Demo garden, invented").waitFor();
    await goTo(page, "Settings");
    assert.equal(await offered.count(), 0, "in the demo garden they would be lost");
    await press(page, "Leave the demo garden");
    await opened(page);
    await offered.waitFor();
    await press(page, "Put them into the journal");
    await offered.waitFor({ state: "detached" });
    assert.deepEqual(await bodies(page, "measure_defined"), [{ measure: "bucket", volume_l: 9 }]);
  });
});

describe("the garden", () => {
  our.visiting("its name and place go into the journal; half a place is asked back", async (page) => {
    await goTo(page, "Settings");
    await opened(page);
    await page.getByText("The journal does not say where the garden lies; a usual temperate place stands in.").waitFor();
    await press(page, "Describe the garden");
    await page.getByLabel("Name of the garden").fill("Mill Lane");
    await page.getByRole("textbox", { name: "Latitude, degrees" }).fill("33,9");
    await press(page, "Above or below zero, Latitude, degrees");
    await press(page, "Save the garden");
    await page.getByText("Give both latitude and longitude, or neither.").waitFor();
    await page.getByRole("textbox", { name: "Longitude, degrees" }).fill("181");
    await press(page, "Save the garden");
    await page.locator(".settings .log-form .fault").filter({ hasText: /180/ }).waitFor();
    await page.getByRole("textbox", { name: "Longitude, degrees" }).fill("18.4");
    await press(page, "Save the garden");
    await page.getByText(/^The garden lies at 33\.9°\sS, 18\.4°\sE\.$/).waitFor();
    const [body] = await bodies(page, "garden_described");
    assert.equal(body.name, "Mill Lane");
    assert.equal(body.place.latitude_deg, -33.9);
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByText("The journal does not say where the garden lies").waitFor();
  });

  our.visiting("what is not changed stays as it was, also in the other units", async (page) => {
    await goTo(page, "Settings");
    await opened(page);
    await press(page, "Describe the garden");
    const field = (name) => page.getByRole("textbox", { name });
    await field("Latitude, degrees").fill("51.4778");
    await field("Longitude, degrees").fill("0.3");
    await field(/^Height above the sea/).fill("12");
    await field(/^Coldest month/).fill("4.7");
    await press(page, "Save the garden");
    await page.getByText(/^The garden lies at /).waitFor();
    await page.getByLabel("Pounds and US gallons").check();
    await press(page, "Describe the garden");
    assert.equal(await field(/^Height above the sea/).inputValue(), "39.4");
    assert.equal(await field(/^Coldest month/).inputValue(), "40.5");
    await field(/^Warmest month/).fill("68");
    await page.getByLabel("Name of the garden").fill("Mill Lane");
    await press(page, "Save the garden");
    await page.getByText("Mill Lane", { exact: true }).waitFor();
    const [first, second] = await bodies(page, "garden_described");
    assert.deepEqual(second.place, { ...first.place, warmest_month_c: 20 });
  });
});

describe("the clock", () => {
  test("follows the device, or what is chosen, wherever the page shows a time", async () => {
    for (const [locale, pattern, choice, other] of [["en-GB", /^18:05/, "12 hours", /^6:05 pm/i], ["en-US", /^6:05 pm/i, "24 hours", /^18:05/]]) {
      const context = await our.browser.newContext({ ...PHONE, locale });
      const page = await context.newPage();
      await open(page, our.program.address);
      await startHeap(page, "Bin 1");
      await toHeap(page, "Bin 1");
      await form(page, "Note");
      await page.getByLabel("Note", { exact: true }).fill("at five past six");
      await page.getByLabel("When").fill("2026-05-01T18:05");
      await press(page, "Log the note");
      await told(page, /five past six/);
      const time = async () => plain(await page.locator(".entry-time").last().innerText());
      await goTo(page, "Logbook");
      assert.match(await time(), pattern, locale);
      await goTo(page, "Settings");
      await page.getByLabel(new RegExp(`^${choice}`)).check();
      await goTo(page, "Logbook");
      assert.match(await time(), other, locale);
      await page.reload();
      await ready(page);
      await opened(page);
      assert.match(await time(), other, `${locale}, after a reload`);
      await context.close();
    }
  });
});

describe("keeping", () => {
  // What the browser answers is its own affair: here it is made to say yes or no, and it is counted how often it was asked.
  const answering = (says) => (context) => context.addInitScript((says) => {
    window.asked = 0;
    let promised = false;
    StorageManager.prototype.persisted = async () => promised;
    StorageManager.prototype.persist = async () => {
      window.asked += 1;
      promised = says;
      return says;
    };
  }, says);

  for (const [says, line] of [[true, /^The browser promised to keep this journal/], [false, /^The browser made no promise this time\./]]) {
    our.visiting(`the browser is asked only when the keeper taps, after the first entry, with the reason; it says ${says ? "yes" : "no"}`, async (page) => {
      await goTo(page, "Settings");
      await opened(page);
      assert.equal(await page.getByRole("button", { name: "Keep this journal" }).count(), 0, "nothing to keep yet");
      await startHeap(page, "Bin 1");
      assert.equal(await page.evaluate(() => window.asked), 0);
      await page.getByText(/^When a device runs short of room, a browser may clear what pages keep\./).waitFor();
      await goTo(page, "Settings");
      await press(page, "Keep this journal");
      await page.getByText(line).waitFor();
      assert.equal(await page.evaluate(() => window.asked), 1);
      assert.equal(await page.getByRole("button", { name: "Keep this journal" }).count(), says ? 0 : 1);
      await page.getByText("What could clear this journal").click();
      await page.getByText(/seven days of browsing without a visit/).waitFor();
      await page.getByText(/^The page and its journal use [\d.]+\s[kMG]B of the [\d.]+\s[kMG]B that the browser allows them\.$/).waitFor();
    }, { prepare: answering(says) });
  }

  our.visiting("the home screen: by a button where the browser hands one out, else in words", async (page) => {
    await goTo(page, "Settings");
    await page.getByText(/^iPhone and iPad, in Safari: the Share button/).waitFor();
    await page.evaluate(() => {
      const event = new Event("beforeinstallprompt", { cancelable: true });
      event.prompt = () => { window.prompted = true; };
      dispatchEvent(event);
    });
    await press(page, "Put it there");
    await until(() => page.evaluate(() => window.prompted === true), "the browser was not asked");
    await page.getByText(/^iPhone and iPad/).waitFor();
  });
});

describe("a new version", () => {
  test("is found when asked for, offers itself, waits for what is being entered, and takes over on a tap", async () => {
    let edition = "";
    const change = (path, text) => (path === "/sw.js" ? text.replace(/const VERSION = "/, `$&${edition}`) : text);
    const proxy = await startProxy(our.program, { change });
    const context = await our.browser.newContext(PHONE);
    try {
      const page = await context.newPage();
      await open(page, proxy.address);
      await kept(page);
      await startHeap(page, "Bin 1");
      await goTo(page, "Settings");
      await page.getByText(/^This is Heapwright\s\d+\.\d+\.\d+\.$/).waitFor();
      await press(page, "Look for a new version");
      await page.getByText("This is the newest version there is.").waitFor();
      edition = "next-";
      await press(page, "Look for a new version");
      await page.getByText(/^A new version is here and waits\./).waitFor();
      await goTo(page, "Heaps");
      await page.getByText(/^A new version is here and waits\./).waitFor();
      await press(page, "Start a heap");
      await page.getByLabel("Name", { exact: true }).fill("Bin 2");
      await press(page, "Use the new version");
      await page.getByText(/^Something is being entered\./).waitFor();
      await press(page, "Start this heap");
      await told(page, /Started Bin 2/);
      await Promise.all([page.waitForEvent("load"), press(page, "Use the new version")]);
      await ready(page);
      await goTo(page, "Logbook");
      await opened(page);
      assert.deepEqual(await texts(page), ["Started Bin 2", "Started Bin 1"]);
      const editions = () => page.evaluate(async () => (await caches.keys()).map((name) => name.split(" ").at(-1)));
      await until(async () => (await editions()).every((name) => name.startsWith("next-")), "the old version is still kept");
      // Without signal it says so.
      await context.setOffline(true);
      await proxy.stop();
      await goTo(page, "Settings");
      await press(page, "Look for a new version");
      await page.getByText("No signal: try again when there is one.").waitFor();
    } finally {
      await context.close();
      await proxy.stop().catch(() => {});
    }
  });
});

// Used by hand: pictures to look at.
const PICTURES = process.env.HEAPWRIGHT_PICTURES;
test("pictures of the settings", { skip: PICTURES ? false : "HEAPWRIGHT_PICTURES names no folder" }, async () => {
  for (const colorScheme of ["light", "dark"]) {
    for (const width of [360, 768, 1280]) {
      const context = await our.browser.newContext({ viewport: { width, height: 800 }, colorScheme });
      const page = await context.newPage();
      await open(page, our.program.address);
      await startHeap(page, "Bin 1");
      await toHeap(page, "Bin 1");
      await note(page, "one");
      await weigh(page, "bucket", "0.8", "12.6");
      await page.screenshot({ path: `${PICTURES}/settings-${colorScheme}-${width}.png`, fullPage: true });
      await context.close();
    }
  }
});
