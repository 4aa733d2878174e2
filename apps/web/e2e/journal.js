// The keeper's hands on the journal: heaps, forms, entries, files, and a look at what the device holds.
import { goTo, plain } from "./keeper.js";

/** The bar that tells what was done last. */
export const done = (page) => page.locator(".done-line");
/** The entries that are shown, latest first. */
export const entries = (page) => page.locator(".entry");

/** The texts of the entries that are shown, latest first. */
export async function texts(page) {
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
export async function exported(page) {
  await goTo(page, "Settings");
  const [file] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Export the journal" }).click(),
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
