// How every place looks, against pictures that a person has looked at. `UPDATE_LOOKS=1 node --test looks.test.js` takes them anew.
import assert from "node:assert/strict";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { mkdtemp } from "node:fs/promises";
import os from "node:os";
import path from "node:path";
import { before, describe, test } from "node:test";
import { fileURLToPath } from "node:url";
import { rig } from "./harness.js";
import { differing, drawnBytes, LIGHTS, looked, LOOKS, madeWith, MOST_PX, picture, readPicture, WIDTHS_PX, written } from "./looks.js";

const FOLDER = fileURLToPath(new URL("looks/", import.meta.url));
const MADE_WITH = path.join(FOLDER, "made-with.json");
const MOST_BYTES = 6_000_000;
const isUpdating = process.env.UPDATE_LOOKS === "1";

const our = rig();
let made;
let here;
let elsewhere;

/** Why these pictures say nothing here; nothing when they do. */
function whyNot() {
  if (made.browser !== here.browser) return `the pictures were taken with Chromium ${made.browser}, this is ${here.browser}`;
  if (made.letters !== here.letters) return "letters are drawn otherwise here than where the pictures were taken: another font, or another way to draw it";
  return undefined;
}

describe("looks", () => {
  before(async () => {
    here = await madeWith(our.browser, our.program.address);
    if (isUpdating) {
      mkdirSync(FOLDER, { recursive: true });
      for (const file of readdirSync(FOLDER)) rmSync(path.join(FOLDER, file));
      writeFileSync(MADE_WITH, `${JSON.stringify(here, null, 2)}\n`);
    }
    made = existsSync(MADE_WITH) ? JSON.parse(readFileSync(MADE_WITH, "utf8")) : undefined;
    elsewhere = await mkdtemp(path.join(os.tmpdir(), "heapwright-looks-"));
  });

  test("the pictures are there, one for each place, width and light, and small", () => {
    assert.ok(made, "no pictures have been taken yet; UPDATE_LOOKS=1 takes them");
    const names = Object.keys(LOOKS).flatMap((place) => WIDTHS_PX.flatMap((width) => LIGHTS.map((light) => `${place}-${width}-${light}.png`)));
    const missing = isUpdating ? [] : names.filter((name) => !existsSync(path.join(FOLDER, name)));
    assert.deepEqual(missing, []);
    const bytes = readdirSync(FOLDER).reduce((sum, file) => sum + statSync(path.join(FOLDER, file)).size, 0);
    assert.ok(bytes <= MOST_BYTES, `${bytes} bytes`);
  });

  for (const place of Object.keys(LOOKS)) {
    for (const light of LIGHTS) {
      for (const width of WIDTHS_PX) {
        test(`looks as it did: ${place}, ${width} px, ${light}`, async (run) => {
          assert.ok(made, "no pictures have been taken yet; UPDATE_LOOKS=1 takes them");
          const other = whyNot();
          if (other) return run.skip(other);
          const name = `${place}-${width}-${light}.png`;
          const page = await looked(our.browser, our.program.address, place, width, light);
          const now = await picture(page, place);
          await page.context().close();
          if (isUpdating) return writeFileSync(path.join(FOLDER, name), written(now));
          const { pixels, why, drawn } = differing(readPicture(readFileSync(path.join(FOLDER, name))), now);
          run.diagnostic(`${now.width} x ${now.height} px, ${pixels} px differ where most do`);
          if (pixels <= MOST_PX) return undefined;
          writeFileSync(path.join(elsewhere, name), written(now));
          writeFileSync(path.join(elsewhere, `differences-${name}`), drawnBytes(drawn));
          return assert.fail(`${name}: ${why}; see ${elsewhere}`);
        });
      }
    }
  }

  test("a colour that is a little another and a card that has moved by 8 px are found", async (run) => {
    const page = await looked(our.browser, our.program.address, "today-empty", 360, "light");
    const before = await picture(page, "today-empty");
    assert.equal(differing(before, await picture(page, "today-empty")).pixels, 0, "twice the same");
    for (const [what, rule] of [["a colour", ":root { --soft: #565b4c; }"], ["a ground", ":root { --paper: #efe9da; }"], ["a move", ".place > * { position: relative; inset-inline-start: 8px; }"]]) {
      await page.evaluate((rule) => {
        const sheet = new CSSStyleSheet();
        sheet.replaceSync(rule);
        document.adoptedStyleSheets = [sheet];
      }, rule);
      const { pixels } = differing(before, await picture(page, "today-empty"));
      run.diagnostic(`${what}: ${pixels} px`);
      assert.ok(pixels > MOST_PX, `${what}: ${pixels} px`);
    }
    await page.context().close();
  });
});
