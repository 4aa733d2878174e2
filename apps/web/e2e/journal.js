// The keeper's hands on the journal: heaps, forms, entries, files, and a look at what the device holds.
import { arrived, goTo, plain } from "./keeper.js";

/** The bar that tells what was done last. */
export const done = (page) => page.locator(".done-line");
/** The entries that are shown, latest first. */
export const entries = (page) => page.locator(".entry");

/** The texts of the entries that are shown, latest first, once the place is whole. */
export async function texts(page) {
  await arrived(page);
  return (await entries(page).locator(".entry-text").allInnerTexts()).map(plain);
}

/** Waits until the bar tells something that matches. */
export async function told(page, pattern) {
  await page.waitForFunction((source) => new RegExp(source).test((document.querySelector(".done-line")?.textContent ?? "").replace(/\s+/g, " ")), pattern.source);
}

/** Waits until the journal has been read. */
export async function opened(page) {
  await page.waitForFunction(() => !/Opening the journal/.test(document.body.innerText));
}

/** Starts a heap and goes to it. */
export async function startHeap(page, name) {
  await goTo(page, "Heaps");
  await opened(page);
  await page.getByRole("button", { name: "Start a heap" }).click();
  await page.getByLabel("Name", { exact: true }).fill(name);
  await page.getByRole("button", { name: "Start this heap" }).click();
  await told(page, new RegExp(`Started ${name}`));
}

/** Goes to a heap. */
export async function toHeap(page, name) {
  await goTo(page, "Heaps");
  await page.getByRole("link", { name, exact: true }).click();
  await page.getByRole("heading", { level: 1, name, exact: true }).waitFor();
  await arrived(page);
}

/** Opens one of the forms of a heap. */
export const form = (page, name) => page.getByRole("button", { name, exact: true }).click();

/** Writes a note on the heap that is looked at. */
export async function note(page, text) {
  await form(page, "Note");
  await page.getByLabel("Note", { exact: true }).fill(text);
  await page.getByRole("button", { name: "Log the note" }).click();
  await told(page, new RegExp(text));
}

/** Exports the journal; its bytes. */
export const exported = (page) => downloaded(page, "Export the journal");

/** Presses a button of the settings that offers a file; its name and text. */
export async function downloaded(page, button) {
  await goTo(page, "Settings");
  const [file] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: button }).click(),
  ]);
  const parts = [];
  for await (const part of await file.createReadStream()) parts.push(part);
  return { name: file.suggestedFilename(), text: Buffer.concat(parts).toString() };
}

/** Chooses a file to import and waits for what is told of it. */
export async function looked(page, text) {
  await goTo(page, "Settings");
  await page.getByLabel("Import a file").setInputFiles({ name: "journal.jsonl", mimeType: "application/jsonl", buffer: Buffer.from(text) });
  const arrival = page.getByRole("group", { name: "What the file holds" });
  await arrival.waitFor();
  return plain(await arrival.innerText());
}

/** Takes in the file that was looked at. */
export async function takeIn(page) {
  await page.getByRole("button", { name: "Take in" }).click();
  await page.getByText(/^Taken in: /).waitFor();
}

/** All lines that the device holds, in their order, straight from the database. */
export function onTheDevice(page) {
  return page.evaluate(async () => {
    const connection = await new Promise((resolve, reject) => {
      const request = indexedDB.open("heapwright");
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    const all = (store) => new Promise((resolve, reject) => {
      const request = connection.transaction(store).objectStore(store).getAll();
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    const [blocks, tail] = [await all("blocks"), await all("tail")];
    connection.close();
    return { blocks: blocks.length, lines: [...blocks.flatMap((block) => block.lines.split("\n")), ...tail.map((row) => row.line)] };
  });
}

/** Writes over something in the database, as a failing disk would. */
export function spoil(page, store, key, change) {
  return page.evaluate(async ([store, key, change]) => {
    const connection = await new Promise((resolve) => {
      const request = indexedDB.open("heapwright");
      request.onsuccess = () => resolve(request.result);
    });
    await new Promise((resolve, reject) => {
      const transaction = connection.transaction(store, "readwrite");
      const of = transaction.objectStore(store);
      of.get(key).onsuccess = ({ target: { result } }) => {
        const [field, from, to] = change;
        of.put({ ...result, [field]: result[field].replace(from, to) }, key);
      };
      transaction.oncomplete = resolve;
      transaction.onabort = () => reject(transaction.error);
    });
    connection.close();
  }, [store, key, change]);
}

/** Everything that the database holds, as plain values: bytes as lists under "bytes". */
export function databaseOf(page) {
  return page.evaluate(async () => {
    const connection = await new Promise((resolve, reject) => {
      const request = indexedDB.open("heapwright");
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    const plain = (value) => {
      if (value instanceof Uint8Array) return { bytes: [...value] };
      if (value && typeof value === "object") return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, plain(part)]));
      return value;
    };
    const stores = {};
    for (const name of connection.objectStoreNames) {
      const of = connection.transaction(name).objectStore(name);
      const all = (method) => new Promise((resolve, reject) => {
        const request = of[method]();
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
      const [keys, values] = [await all("getAllKeys"), await all("getAll")];
      stores[name] = keys.map((key, index) => [key, plain(values[index])]);
    }
    const { version } = connection;
    connection.close();
    return { version, stores };
  });
}

/** Puts such a database in place before the page is opened, as an earlier version of the page left it. */
export function withDatabase(page, database) {
  return page.evaluate(async ({ version, stores }) => {
    const rich = (value) => {
      if (value && typeof value === "object") {
        if (Array.isArray(value.bytes)) return new Uint8Array(value.bytes);
        return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, rich(part)]));
      }
      return value;
    };
    const connection = await new Promise((resolve, reject) => {
      const request = indexedDB.open("heapwright", version);
      request.onupgradeneeded = () => Object.keys(stores).forEach((name) => request.result.createObjectStore(name));
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    for (const [name, rows] of Object.entries(stores)) {
      await new Promise((resolve, reject) => {
        const transaction = connection.transaction(name, "readwrite");
        for (const [key, value] of rows) transaction.objectStore(name).put(rich(value), key);
        transaction.oncomplete = resolve;
        transaction.onabort = () => reject(transaction.error);
      });
    }
    connection.close();
  }, database);
}
