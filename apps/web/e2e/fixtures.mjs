// Writes fixtures/journal-2026-11.json.gz: a database as the page of November 2026 left it. Made once, from an invented garden,
// and kept: later versions must open it. `node fixtures.mjs` with HEAPWRIGHT_BIN naming the program makes it anew; a version that
// writes another shape gets a file of its own beside it.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import { open, openBrowser, PHONE, startProgram } from "./harness.js";
import { databaseOf, exported, form, looked, note, startHeap, takeIn, toHeap, told } from "./journal.js";

const DIST = new URL("../../../dist/", import.meta.url);
const LINES = 1200;

const program = await startProgram();
const browser = await openBrowser();
try {
  const page = await (await browser.newContext(PHONE)).newPage();
  await open(page, program.address);
  // Lines of the invented garden first, so that a block is full.
  const demo = readFileSync(new URL(readdirSync(DIST).find((name) => name === "demo.jsonl"), DIST), "utf8").trimEnd().split("\n");
  const pattern = demo.find((line) => line.includes('"kind":"noted"'));
  const more = Array.from({ length: LINES - demo.length }, (_, index) => pattern
    .replace(/"id":"[^"]+"/, `"id":"0193f2a1-b3c4-7000-8000-${String(index).padStart(12, "0")}"`)
    .replace(/"text":"[^"]*"/, `"text":"note ${index}"`));
  await looked(page, [...demo, ...more].join("\n"));
  await takeIn(page);
  await startHeap(page, "Bin 1");
  await toHeap(page, "Bin 1");
  const png = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(64, 48);
    canvas.getContext("2d").fillRect(8, 8, 32, 16);
    return [...new Uint8Array(await (await canvas.convertToBlob()).arrayBuffer())];
  });
  await form(page, "Note");
  await page.getByLabel("Note", { exact: true }).fill("with a picture");
  await page.getByLabel("Picture (may be left out)").setInputFiles({ name: "heap.png", mimeType: "image/png", buffer: Buffer.from(png) });
  await page.getByRole("button", { name: "Log the note" }).click();
  await told(page, /with a picture/);
  await note(page, "plain");
  await page.getByRole("button", { name: "Undo" }).click();
  await told(page, /^Taken back/);
  await exported(page);
  const database = await databaseOf(page);
  writeFileSync(new URL("fixtures/journal-2026-11.json.gz", import.meta.url), gzipSync(JSON.stringify(database), { level: 9 }));
  console.log(Object.entries(database.stores).map(([name, rows]) => `${name}: ${rows.length}`).join(", "));
} finally {
  await browser.close();
  await program.kill();
}
