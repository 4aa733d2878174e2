// One week beside a heap, from the first visit to a second device: on a phone, most of it without signal.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { gunzipSync } from "node:zlib";
import { banded, pictured, RUNS_MS } from "./ahead.js";
import { kept, newProfile, open, openBrowser, PHONE, ready, startProgram, until, watch } from "./harness.js";
import { exported, form, looked, note, onTheDevice, opened, startHeap, takeIn, texts, toHeap, told, withDatabase } from "./journal.js";
import { goTo, textOf, tile } from "./keeper.js";

/** Sets the clock of the device to a day of the week that ends now, at the present hour. */
const onDay = (page, day) => page.clock.setSystemTime(new Date(Date.now() - (7 - day) * 24 * 3600 * 1000));

async function read(page, temperature) {
  await form(page, "Read");
  await page.getByLabel("Temperature, °C").fill(String(temperature));
  await page.getByLabel("moist", { exact: true }).check();
  await page.getByRole("button", { name: "Log the reading" }).click();
  await told(page, new RegExp(`^Looked at Bin 1: ${temperature} °C`));
}

async function feed(page, tiles) {
  await goTo(page, "Balance");
  for (const name of tiles) await tile(page, name).click();
  const log = page.locator(".log-feed");
  await log.getByLabel("Heap").selectOption({ label: "Bin 1" });
  await log.getByRole("button", { name: "Log this feed" }).click();
  await told(page, /^Fed Bin 1/);
}

test("a week: logged with and without signal, forecast, undone, exported, taken to another device, on paper", { timeout: 4 * RUNS_MS }, async (run) => {
  const program = await startProgram();
  const profile = await newProfile();
  const second = await newProfile();
  try {
    // The first visit, and two days with a signal.
    const context = await profile.open(PHONE);
    const page = context.pages()[0];
    const troubles = watch(page, program.address);
    await onDay(page, 1);
    await open(page, program.address);
    await startHeap(page, "Bin 1");
    await feed(page, []);
    await toHeap(page, "Bin 1");
    await onDay(page, 2);
    await read(page, 31);
    await onDay(page, 3);
    await read(page, 48);
    await kept(page);

    // The signal goes, and with it whoever handed out the page.
    await context.setOffline(true);
    await program.kill();
    await onDay(page, 4);
    await read(page, 57);
    await note(page, "steams in the morning");
    await onDay(page, 5);
    await feed(page, ["Coffee grounds", "Fresh grass"]);
    await page.reload();
    await ready(page);
    await toHeap(page, "Bin 1");
    await until(async () => (await texts(page)).length === 7, "not all of it is there after a reload without signal");
    await onDay(page, 6);
    await read(page, 52);
    // From here on both devices have the same moment: what lies ahead is told from it.
    const evening = new Date();
    await page.clock.setFixedTime(evening);
    await form(page, "Turned");
    await told(page, /^Turned Bin 1/);

    // A slip, taken back.
    await note(page, "on the wrong heap");
    await page.getByRole("button", { name: "Undo" }).click();
    await told(page, /^Taken back: Note on Bin 1: on the wrong heap/);
    const week = await texts(page);
    assert.equal(week.length, 9);

    // The days ahead, still without signal.
    await pictured(page);
    await banded(page);
    const ahead = await textOf(page.locator(".ahead .over-time figcaption p").first());
    assert.match(ahead, /^Core temperature: about \d+ °C now/);

    // On paper.
    const paper = await page.pdf({ format: "A4" });
    assert.ok(paper.subarray(0, 5).toString() === "%PDF-" && paper.length > 10_000, `${paper.length} bytes`);

    // Elsewhere: the file, into another browser, which meets the page on another program.
    const file = await exported(page);
    assert.equal(JSON.parse(file.text.split("\n")[0]).events, 11, "the slip and its taking back are in it");
    const other = await startProgram();
    try {
      const elsewhere = await second.open(PHONE);
      const there = elsewhere.pages()[0];
      await there.clock.setFixedTime(evening);
      await open(there, other.address);
      assert.match(await looked(there, file.text), /The file holds 11 entries: 11 new, 0 known already\./);
      await takeIn(there);
      await toHeap(there, "Bin 1");
      await until(async () => (await texts(there)).length === week.length, "not all of it arrived");
      assert.deepEqual(await texts(there), week);
      await pictured(there);
      await banded(there);
      assert.equal(await textOf(there.locator(".ahead .over-time figcaption p").first()), ahead, "both tell the same days ahead");
      assert.deepEqual((await onTheDevice(there)).lines, (await onTheDevice(page)).lines, "byte for byte");
      await elsewhere.close();
    } finally {
      await other.kill();
    }
    assert.deepEqual(troubles, []);
    run.diagnostic(`the file of the week has ${file.text.length} bytes, its sheet ${paper.length}`);
    await context.close();
  } finally {
    await program.kill();
    await profile.remove();
    await second.remove();
  }
});

test("a week that begins with the journal of an earlier version", async () => {
  const database = JSON.parse(gunzipSync(readFileSync(new URL("./fixtures/journal-2026-11.json.gz", import.meta.url))));
  const program = await startProgram();
  const browser = await openBrowser();
  try {
    const context = await browser.newContext(PHONE);
    const page = await context.newPage();
    await page.goto(`${program.address}icon.svg`);
    await withDatabase(page, database);
    await open(page, program.address);
    await kept(page);
    await goTo(page, "Logbook");
    await opened(page);
    const before = (await onTheDevice(page)).lines.length;
    await toHeap(page, "Bin 1");
    await read(page, 44);
    await context.setOffline(true);
    await program.kill();
    await page.reload();
    await ready(page);
    await opened(page);
    await note(page, "goes on");
    const { lines } = await onTheDevice(page);
    assert.equal(lines.length, before + 2);
    const file = await exported(page);
    assert.equal(JSON.parse(file.text.split("\n")[0]).events, before + 2);
    await context.close();
  } finally {
    await browser.close();
    await program.kill();
  }
});
