// The journal and a browser that fails it: no room, no database, two tabs, storage that is cleared, upgrades that break.
// Each time: a plain sentence, what was typed is still there, and what was told as saved is not lost.
import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { readFileSync } from "node:fs";
import { gunzipSync } from "node:zlib";
import { newProfile, open, PHONE, ready, rig, until } from "./harness.js";
import {
  done, downloaded, exported, form, looked, note, onTheDevice, opened, startHeap, takeIn, texts, toHeap, told, withDatabase,
} from "./journal.js";
import { goTo, textOf } from "./keeper.js";

const our = rig();
const origin = () => new URL(our.program.address).origin;
const trouble = (page) => page.locator(".trouble");

/** A note that is typed and sent, but not waited for. */
async function sendNote(page, text) {
  await form(page, "Note");
  await page.getByLabel("Note", { exact: true }).fill(text);
  await page.getByRole("button", { name: "Log the note" }).click();
}

/** A line of a note that is new, after the pattern of one that the page wrote. */
const another = (pattern, index) => pattern
  .replace(/"id":"[^"]+"/, `"id":"0193f2a1-b3c4-7000-8000-${String(index).padStart(12, "0")}"`)
  .replace(/"text":"[^"]*"/, `"text":"note ${index}"`);

/** The origin's storage is taken away, as a browser short of room does. */
async function clear(context, page, storageTypes = "indexeddb,cache_storage,local_storage") {
  const devtools = await context.newCDPSession(page);
  await devtools.send("Storage.clearDataForOrigin", { origin: origin(), storageTypes });
}

describe("no room", () => {
  test("R4 an import that does not fit is refused whole, and taken in whole when there is room", async () => {
    const profile = await newProfile();
    let context = await profile.open(PHONE);
    let page = context.pages()[0];
    await open(page, our.program.address);
    await startHeap(page, "Bin 1");
    await toHeap(page, "Bin 1");
    await note(page, "pattern");
    const pattern = (await exported(page)).text.trimEnd().split("\n").at(-1);
    await context.close();

    context = await profile.open(PHONE);
    page = context.pages()[0];
    const devtools = await context.newCDPSession(page);
    await page.goto(`${our.program.address}icon.svg`);
    await devtools.send("Storage.overrideQuotaForOrigin", { origin: origin(), quotaSize: 1000 });
    await open(page, our.program.address);
    const many = Array.from({ length: 3000 }, (_, index) => another(pattern, index)).join("\n");
    await looked(page, many);
    await page.getByRole("button", { name: "Take in" }).click();
    await page.getByText(/^This device has no room left, so nothing was saved\./).waitFor();
    assert.equal((await onTheDevice(page)).lines.length, 2, "all or nothing");
    await devtools.send("Storage.overrideQuotaForOrigin", { origin: origin() });
    await page.getByRole("button", { name: "Take in" }).click();
    await page.getByText("Taken in: 3000 entries.").waitFor();
    assert.equal((await onTheDevice(page)).lines.length, 3002);
    await context.close();
    await profile.remove();
  });
});

describe("no database", () => {
  for (const [what, refuse] of [
    ["is closed to the page by a policy", () => { IDBFactory.prototype.open = () => { throw new DOMException("", "SecurityError"); }; }],
    ["fails in a private window", () => {
      IDBFactory.prototype.open = () => {
        const request = new EventTarget();
        Object.defineProperty(request, "error", { value: new DOMException("", "InvalidStateError") });
        setTimeout(() => request.onerror?.(new Event("error")));
        return request;
      };
    }],
    ["is not there at all", () => { Object.defineProperty(globalThis, "indexedDB", { value: undefined }); }],
  ]) {
    our.visiting(`that ${what}: said once, nothing passes for saved, and the page balances`, async (page) => {
      await trouble(page).getByText(/^This browser keeps no journal for this page, so nothing was saved\. Leave the private window/).waitFor();
      assert.match(await textOf(page.locator(".answer-line")), /^Put /);
      await goTo(page, "Heaps");
      await page.getByRole("button", { name: "Start a heap" }).click();
      await page.getByLabel("Name", { exact: true }).fill("Bin 1");
      await page.getByRole("button", { name: "Start this heap" }).click();
      await page.locator(".fault").getByText(/^This browser keeps no journal/).waitFor();
      assert.equal(await page.getByLabel("Name", { exact: true }).inputValue(), "Bin 1");
      assert.equal(await done(page).count(), 0);
    }, { prepare: (context) => context.addInitScript(refuse) });
  }
});

describe("two tabs", () => {
  our.visiting("that both write, again and again: every entry is there once, in both", async (one, context) => {
    await startHeap(one, "Bin 1");
    await toHeap(one, "Bin 1");
    const other = await context.newPage();
    await open(other, one.url());
    await other.getByRole("heading", { level: 1, name: "Bin 1" }).waitFor();
    const rounds = 5;
    for (let round = 0; round < rounds; round += 1) {
      await Promise.all([[one, `first ${round}`], [other, `second ${round}`]].map(async ([page, text]) => {
        await note(page, text);
      }));
    }
    const expected = Array.from({ length: rounds }, (_, round) => [`Note on Bin 1: first ${round}`, `Note on Bin 1: second ${round}`])
      .flat().concat("Started Bin 1").sort();
    for (const page of [one, other]) {
      await until(async () => (await texts(page)).length === expected.length, "an entry is missing in a tab");
      assert.deepEqual((await texts(page)).sort(), expected);
    }
    const { lines } = await onTheDevice(one);
    assert.equal(new Set(lines.map((line) => JSON.parse(line).stamp)).size, expected.length, "no stamp twice");
    await one.reload();
    await ready(one);
    assert.equal(await trouble(one).innerText(), "", "the chain of lines is whole");
  });

  our.visiting("of which one is in the demo garden: neither hears of the other", async (one, context) => {
    await startHeap(one, "Bin 1");
    const other = await context.newPage();
    await open(other, our.program.address);
    await goTo(other, "Settings");
    await other.getByRole("button", { name: "Look around in an invented garden" }).click();
    await other.getByText("Demo garden, invented").waitFor();
    await toHeap(one, "Bin 1");
    await note(one, "mine");
    await goTo(other, "Heaps");
    await other.locator(".heap-link").first().click();
    await form(other, "Turned");
    await told(other, /^Turned /);
    assert.equal(await other.getByText("mine").count(), 0);
    assert.equal((await onTheDevice(one)).lines.length, 2);
    await goTo(one, "Logbook");
    assert.deepEqual(await texts(one), ["Note on Bin 1: mine", "Started Bin 1"]);
  });
});

describe("storage that the browser clears", () => {
  our.visiting("while the page is open: told, and written back with the next entry, byte for byte", async (page, context) => {
    await startHeap(page, "Bin 1");
    await toHeap(page, "Bin 1");
    for (const text of ["one", "two"]) await note(page, text);
    const before = (await onTheDevice(page)).lines;
    await clear(context, page);
    await trouble(page).getByText(/^The browser has cleared the journal on this device\. It is still on this page/).waitFor();
    await note(page, "three");
    await trouble(page).getByText(/^The browser had cleared the journal on this device\. It was written back from this page: 3 entries\./).waitFor();
    const after = (await onTheDevice(page)).lines;
    assert.deepEqual(after.slice(0, 3), before, "byte for byte");
    assert.equal(after.length, 4);
    const devices = new Set(after.map((line) => JSON.parse(line).stamp.split(".").at(-1)));
    assert.equal(devices.size, 1, "still the same device");
    await note(page, "four");
    await until(async () => (await trouble(page).innerText()) === "", "what is mended is still warned of");
    await page.reload();
    await ready(page);
    await until(async () => (await texts(page)).length === 5, "entries are lost");
    assert.equal(await trouble(page).innerText(), "");
  });

  our.visiting("while the page is open, and there is no room to write it back: nothing passes for saved, and the next try brings all", async (page, context) => {
    await startHeap(page, "Bin 1");
    await toHeap(page, "Bin 1");
    for (const text of ["one", "two"]) await note(page, text);
    const before = (await onTheDevice(page)).lines;
    // What a browser without room does: it gives up the transaction.
    await page.evaluate(() => {
      const begin = IDBDatabase.prototype.transaction;
      IDBDatabase.prototype.transaction = function (...rest) {
        const transaction = begin.apply(this, rest);
        if (window.full && rest[1] === "readwrite") {
          Object.defineProperty(transaction, "error", { value: new DOMException("", "QuotaExceededError") });
          queueMicrotask(() => transaction.abort());
        }
        return transaction;
      };
    });
    await clear(context, page);
    await trouble(page).getByText(/^The browser has cleared the journal on this device\./).waitFor();
    await page.evaluate(() => { window.full = true; });
    const refused = page.getByText(/^This device has no room left, so nothing was saved\./).first();
    await goTo(page, "Settings");
    await page.getByRole("button", { name: "Export the journal" }).click();
    await refused.waitFor();
    await toHeap(page, "Bin 1");
    await sendNote(page, "three");
    await refused.waitFor();
    assert.deepEqual((await onTheDevice(page)).lines, []);
    await page.evaluate(() => { window.full = false; });
    await page.getByRole("button", { name: "Log the note" }).click();
    await told(page, /three/);
    await trouble(page).getByText(/It was written back from this page: 3 entries\./).waitFor();
    const after = (await onTheDevice(page)).lines;
    assert.deepEqual(after.slice(0, 3), before, "byte for byte");
    assert.equal(after.length, 4);
    await page.reload();
    await ready(page);
    await until(async () => (await texts(page)).length === 4, "entries are lost");
    assert.equal(await trouble(page).innerText(), "");
  });

  our.visiting("while two tabs are open, and one writes it back in another order: the other finds it whole and writes on", async (one, context) => {
    await startHeap(one, "Bin 1");
    await toHeap(one, "Bin 1");
    await note(one, "first");
    const pattern = (await exported(one)).text.trimEnd().split("\n").at(-1);
    await toHeap(one, "Bin 1");
    await note(one, "second");
    // Taken in behind the second note, but written before it.
    await looked(one, another(pattern, 1));
    await takeIn(one);
    const other = await context.newPage();
    await open(other, our.program.address);
    await toHeap(other, "Bin 1");
    assert.equal((await texts(other)).length, 4);
    const before = (await onTheDevice(one)).lines;
    await clear(context, one);
    for (const page of [one, other]) await trouble(page).getByText(/^The browser has cleared the journal/).waitFor();
    await toHeap(one, "Bin 1");
    await note(one, "third");
    const after = (await onTheDevice(one)).lines;
    assert.deepEqual(after.slice(0, 4).sort(), [...before].sort());
    assert.notDeepEqual(after.slice(0, 4), before, "the order is another");
    await until(async () => (await texts(other)).length === 5, "the other tab does not follow");
    await until(async () => (await trouble(other).innerText()) === "", "the other tab takes it for damaged or cleared");
    await note(other, "fourth");
    assert.equal((await onTheDevice(one)).lines.length, 6);
    for (const page of [one, other]) {
      await page.reload();
      await ready(page);
      await until(async () => (await texts(page)).length === 6, "entries are lost");
      assert.equal(await trouble(page).innerText(), "");
    }
  });

  our.visiting("while the page is open, and the keeper exports: the file is whole", async (page, context) => {
    await startHeap(page, "Bin 1");
    await toHeap(page, "Bin 1");
    await note(page, "one");
    await clear(context, page);
    const file = await exported(page);
    const [head, ...lines] = file.text.trimEnd().split("\n");
    assert.equal(JSON.parse(head).events, 2);
    assert.equal(lines.length, 2);
    assert.equal((await onTheDevice(page)).lines.length, 2);
  });

  our.visiting("while the page is open, and the keeper leaves: nothing comes back by itself", async (page, context) => {
    await startHeap(page, "Bin 1");
    await clear(context, page);
    await page.reload();
    await ready(page);
    await goTo(page, "Heaps");
    await page.getByText(/^No heap yet\./).waitFor();
    assert.deepEqual((await onTheDevice(page)).lines, []);
  });

  our.visiting("between visits, the journal alone: it is missed, and the exported file brings it back", async (page, context) => {
    await startHeap(page, "Bin 1");
    await toHeap(page, "Bin 1");
    await note(page, "one");
    const file = await exported(page);
    const { address } = our.program;
    await page.goto(`${address}icon.svg`);
    await clear(context, page, "indexeddb");
    await open(page, address);
    await trouble(page).getByText(/^This browser had a journal of 2 entries and has cleared it\. If you have an exported file, import it/).waitFor();
    await looked(page, file.text);
    await takeIn(page);
    assert.equal(await trouble(page).innerText(), "", "the file has mended it");
    await toHeap(page, "Bin 1");
    assert.equal((await texts(page)).length, 2);
    await page.reload();
    await ready(page);
    await opened(page);
    assert.equal(await trouble(page).innerText(), "");
  }, { expected: /404|icon/ });
});

describe("upgrades", () => {
  const prepared = (work) => async (context) => {
    const page = await context.newPage();
    await page.goto(`${our.program.address}icon.svg`);
    await page.evaluate(work);
    await page.close();
  };

  our.visiting("a database of a newer version is left as it is, and that is said", async (page) => {
    await trouble(page).getByText(/^A newer version of this page has been at the journal, so nothing was saved\./).waitFor();
    assert.match(await textOf(page.locator(".answer-line")), /^Put /);
    const version = await page.evaluate(async () => (await indexedDB.databases())[0].version);
    assert.equal(version, 7);
  }, {
    prepare: prepared(() => new Promise((resolve) => {
      const request = indexedDB.open("heapwright", 7);
      request.onsuccess = () => { request.result.close(); resolve(); };
    })),
  });

  our.visiting("a newer version that takes the database while the page is open: what was typed stays", async (page, context) => {
    await startHeap(page, "Bin 1");
    await toHeap(page, "Bin 1");
    await prepared(() => new Promise((resolve, reject) => {
      const request = indexedDB.open("heapwright", 2);
      request.onsuccess = () => { request.result.close(); resolve(); };
      request.onblocked = () => reject(new Error("blocked"));
    }))(context);
    await sendNote(page, "typed");
    await page.getByText(/^A newer version of this page has been at the journal, so nothing was saved\./).first().waitFor();
    assert.equal(await page.getByLabel("Note", { exact: true }).inputValue(), "typed");
    assert.equal((await onTheDevice(page)).lines.length, 1, "what was there is there");
  });

  our.visiting("one that breaks off is told, and the next start makes it good", async (page) => {
    await trouble(page).getByText(/^The browser could not save this/).waitFor();
    await page.evaluate(() => { localStorage.setItem("mended", "1"); });
    await page.reload();
    await ready(page);
    await startHeap(page, "Bin 1");
    assert.equal((await onTheDevice(page)).lines.length, 1);
  }, {
    prepare: (context) => context.addInitScript(() => {
      const make = IDBDatabase.prototype.createObjectStore;
      IDBDatabase.prototype.createObjectStore = function (...rest) {
        if (rest[0] === "facts" && !localStorage.getItem("mended")) throw new DOMException("", "UnknownError");
        return make.apply(this, rest);
      };
    }),
    expected: /uncaught|UnknownError/,
  });

  test("a journal as the version of November 2026 left it opens, whole, with its pictures, and goes on", async () => {
    const database = JSON.parse(gunzipSync(readFileSync(new URL("./fixtures/journal-2026-11.json.gz", import.meta.url))));
    const context = await our.browser.newContext(PHONE);
    const page = await context.newPage();
    await page.goto(`${our.program.address}icon.svg`);
    await withDatabase(page, database);
    await open(page, `${our.program.address}#/logbook`);
    await opened(page);
    assert.equal(await trouble(page).innerText(), "");
    const kept = await onTheDevice(page);
    assert.ok(kept.blocks >= 1 && database.stores.tail.length > 0, "blocks and a tail");
    const plainEntries = kept.lines.filter((line) => !/^(amended|withdrawn)$/.test(JSON.parse(line).kind));
    await page.locator(".place .hint", { hasText: `${plainEntries.length} entries.` }).first().waitFor();
    assert.match(await textOf(page.locator(".place .hint").first()), new RegExp(`^${plainEntries.length} entries\\.`));
    await toHeap(page, "Bin 1");
    const picture = page.getByRole("img", { name: "Picture of this note" });
    await picture.waitFor();
    await until(() => picture.evaluate((image) => image.naturalWidth > 0), "the picture does not show");
    await note(page, "from now");
    const after = (await onTheDevice(page)).lines;
    assert.deepEqual(after.slice(0, -1), kept.lines);
    const device = (line) => JSON.parse(line).stamp.split(".").at(-1);
    const [, ours] = database.stores.facts.find(([key]) => key === "device");
    assert.equal(device(after.at(-1)), ours, "the same device writes on");
    await page.reload();
    await ready(page);
    await opened(page);
    assert.equal(await trouble(page).innerText(), "");
    await context.close();
  });
});

describe("another garden is opened while something waits", () => {
  const hold = (page) => page.evaluate(() => new Promise((taken) => {
    navigator.locks.request("heapwright", () => new Promise((free) => { window.free = free; taken(); }));
  }));

  our.visiting("an own entry that waits does not go into the demo garden, and is in the own journal or told as not saved", async (page) => {
    await startHeap(page, "Bin 1");
    await goTo(page, "Settings");
    await hold(page);
    // The swap waits first, the entry behind it.
    await page.getByRole("button", { name: "Look around in an invented garden" }).click();
    await until(() => page.evaluate(async () => (await navigator.locks.query()).pending.length === 1), "the swap does not wait");
    await goTo(page, "Heaps");
    await page.getByRole("button", { name: "Start a heap" }).click();
    await page.getByLabel("Name", { exact: true }).fill("Bin 2");
    await page.getByRole("button", { name: "Start this heap" }).click();
    await until(() => page.evaluate(async () => (await navigator.locks.query()).pending.length === 2), "the entry does not wait");
    await page.evaluate(() => window.free());
    await page.getByText("Demo garden, invented").waitFor();
    await trouble(page).getByText(/^Another garden was opened before this was saved/).waitFor();
    assert.equal(await done(page).count(), 0, "nothing is told as done");
    await goTo(page, "Logbook");
    assert.equal(await page.getByText("Started Bin 2").count(), 0);
    assert.deepEqual((await onTheDevice(page)).lines.length, 1);
  });

  our.visiting("an export that waits does not write the other garden's lines", async (page) => {
    await goTo(page, "Heaps");
    await page.getByRole("button", { name: "Look around in an invented garden" }).click();
    await page.getByText("Demo garden, invented").waitFor();
    await goTo(page, "Settings");
    await hold(page);
    await page.getByRole("button", { name: "Export the journal" }).click();
    await page.getByRole("button", { name: "Leave the demo garden" }).click();
    await page.waitForTimeout(200);
    await page.evaluate(() => window.free());
    await page.getByText(/^Another garden was opened before this was saved/).waitFor();
  });
});

describe("pictures", () => {
  our.visiting("go into a file of their own and come back from it; what was changed on the way is left out", async (page) => {
    await startHeap(page, "Bin 1");
    await toHeap(page, "Bin 1");
    const png = await page.evaluate(async () => {
      const canvas = new OffscreenCanvas(300, 200);
      canvas.getContext("2d").fillRect(20, 20, 100, 100);
      return [...new Uint8Array(await (await canvas.convertToBlob()).arrayBuffer())];
    });
    await form(page, "Note");
    await page.getByLabel("Note", { exact: true }).fill("seen");
    await page.getByLabel("Picture (may be left out)").setInputFiles({ name: "heap.png", mimeType: "image/png", buffer: Buffer.from(png) });
    await page.getByRole("button", { name: "Log the note" }).click();
    await told(page, /seen/);
    const journal = await exported(page);
    const pictures = await downloaded(page, "Export its pictures");
    assert.match(pictures.name, /^heapwright-\d{4}-\d\d-\d\d\.pictures\.jsonl$/);
    const [head, line] = pictures.text.trimEnd().split("\n");
    assert.equal(JSON.parse(head).heapwright_pictures, 1);
    assert.equal(JSON.parse(head).pictures, 1);
    assert.match(JSON.parse(line).picture, /^[0-9a-f]{64}$/);

    const fresh = await our.browser.newContext(PHONE);
    const other = await fresh.newPage();
    await open(other, our.program.address);
    await looked(other, journal.text);
    await takeIn(other);
    const bring = (text) => other.getByLabel("Import a file").setInputFiles({ name: "pictures.jsonl", mimeType: "application/jsonl", buffer: Buffer.from(text) });
    await bring(`${head}\n${line.replace(/"base64":"..../, '"base64":"AAAA')}\n`);
    await other.getByText(/^Taken in: 0 pictures\. Some lines of this file hold no picture/).waitFor();
    await bring(pictures.text);
    await other.getByText("Taken in: 1 picture.", { exact: true }).waitFor();
    await toHeap(other, "Bin 1");
    const picture = other.getByRole("img", { name: "Picture of this note" });
    await picture.waitFor();
    await until(() => picture.evaluate((image) => image.naturalWidth === 300), "the picture does not show");
    await fresh.close();
  });
});
