// Paper and calendar: what the page makes into files, also with nobody answering.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { describe } from "node:test";
import { axe, PATIENCE_MS, rig } from "./harness.js";
import { goTo } from "./keeper.js";

const our = rig();

async function demoGarden(page) {
  await page.getByRole("link", { name: "Look around in an invented garden" }).click();
  await page.getByRole("button", { name: "Leave the demo garden" }).waitFor({ timeout: PATIENCE_MS });
}

async function firstHeap(page) {
  await goTo(page, "Heaps");
  await page.locator(".heap-link").first().click();
}

/** What a tap on the button brings down. */
async function file(page, name) {
  const button = page.getByRole("button", { name, exact: true });
  const [download] = await Promise.all([page.waitForEvent("download", { timeout: PATIENCE_MS }), button.click()]);
  return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
}

/** A whole PDF with its type inside; what is in it is read by the tests of crates/paper. */
function assertTypeset({ name, bytes }, pattern) {
  assert.match(name, pattern);
  assert.equal(bytes.subarray(0, 5).toString("latin1"), "%PDF-");
  assert.match(bytes.subarray(-16).toString("latin1"), /%%EOF\s*$/);
  assert.ok(bytes.length > 10_000, `${bytes.length} bytes`);
}

describe("pages to print", () => {
  our.visiting("the page beside a heap and the record are typeset in the page itself, with nobody answering", async (page) => {
    await demoGarden(page);
    await page.evaluate(() => navigator.serviceWorker.ready);
    await page.context().setOffline(true);
    await firstHeap(page);
    assertTypeset(await file(page, "Page for the bin (PDF)"), /^Heap .+ \d{4}-\d\d-\d\d\.pdf$/);
    await page.getByText("The page is among your downloads.").waitFor();
    assert.deepEqual((await axe(page)).violations, []);
    await goTo(page, "Logbook");
    assertTypeset(await file(page, "Record (PDF)"), /\d{4}-\d\d-\d\d\.pdf$/);
  });

  our.visiting("printed from the browser, every place is without bars and buttons", async (page) => {
    await demoGarden(page);
    for (const place of ["Today", "Balance", "Heaps", "Stores", "Beds", "Logbook", "Settings"]) {
      await page.emulateMedia({ media: "screen" });
      await goTo(page, place);
      await page.emulateMedia({ media: "print" });
      assert.equal(await page.locator(".places").isVisible(), false, place);
      assert.deepEqual(await page.locator("main button:visible").allInnerTexts(), [], place);
      assert.ok((await page.locator("main").innerText()).trim().length > 0, place);
    }
  });
});

describe("a calendar", () => {
  our.visiting("what has a day comes down as one file that calendar programs read", async (page) => {
    await demoGarden(page);
    await goTo(page, "Today");
    const { name, bytes } = await file(page, "Dates for your calendar");
    assert.equal(name, "heapwright.ics");
    const text = bytes.toString("utf8");
    assert.ok(text.startsWith("BEGIN:VCALENDAR\r\n") && text.endsWith("END:VCALENDAR\r\n"));
    const uids = [...text.matchAll(/^UID:(.+)\r$/gm)].map(([, uid]) => uid);
    assert.ok(uids.length > 0 && new Set(uids).size === uids.length, String(uids));
    for (const line of text.split("\r\n")) assert.ok(Buffer.byteLength(line) <= 75, line);
  });
});
