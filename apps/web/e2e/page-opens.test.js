// The page opens: from the program, under its policy, without signal, below any path, and in its next version.
import assert from "node:assert/strict";
import { describe, test } from "node:test";
import { kept, newProfile, open, PHONE, ready, rig, startProgram, startProxy, until, watch } from "./harness.js";

const our = rig();

describe("the page opens", () => {
  test("S2 starts under its policy, with compressed wasm that may be kept for ever", async () => {
    const page = await our.browser.newPage(PHONE);
    const troubles = watch(page, our.program.address);
    const wasm = page.waitForResponse((response) => response.url().endsWith(".wasm"));
    const response = await open(page, our.program.address);
    assert.match(response.headers()["content-security-policy"], /^default-src 'none'; script-src 'self' 'wasm-unsafe-eval';/);
    const headers = await (await wasm).allHeaders();
    assert.equal(headers["content-type"], "application/wasm");
    assert.equal(headers["content-encoding"], "br");
    assert.match(headers["cache-control"], /immutable/);
    assert.equal(await page.getByRole("heading", { level: 1 }).count(), 1);
    await kept(page);
    assert.deepEqual(troubles, []);
    await page.close();
  });

  test("the first paint is real HTML, also where scripts are off", async () => {
    const context = await our.browser.newContext({ ...PHONE, javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(our.program.address);
    assert.match(await page.locator("body").innerText(), /Heapwright/);
    await context.close();
  });

  test("answers without the part that is fetched later, says that the journal is not open, and recovers", async () => {
    const context = await our.browser.newContext({ ...PHONE, serviceWorkers: "block" });
    try {
      const page = await context.newPage();
      await page.route("**/split_*.wasm", (route) => route.abort());
      await open(page, our.program.address);
      await page.getByText("A part of this page could not be fetched").waitFor();
      assert.match(await page.locator(".answer").first().innerText(), /\d/);
      await page.unroute("**/split_*.wasm");
      await page.reload();
      await ready(page);
      await page.getByRole("link", { name: "Heaps" }).click();
      await page.getByText("No heap yet.").waitFor();
      assert.equal(await page.evaluate(() => document.activeElement.id), "title");
    } finally {
      await context.close();
    }
  });

  test("works below any path", async (run) => {
    const proxy = await startProxy(our.program, { prefix: "/plot/7/" });
    run.after(() => proxy.stop());
    const context = await our.browser.newContext(PHONE);
    try {
      const page = await context.newPage();
      const troubles = watch(page, proxy.address);
      await open(page, proxy.address);
      await kept(page);
      await open(page, `${proxy.address}some/deep/place`);
      await context.setOffline(true);
      await open(page, `${proxy.address}another/place`);
      assert.deepEqual(troubles, []);
    } finally {
      await context.close();
    }
  });

  test("a new version waits while the page is open and takes over at the next start", async (run) => {
    let edition = "";
    const change = (path, text) => (path === "/sw.js" ? text.replace(/const VERSION = "/, `$&${edition}`) : text);
    const proxy = await startProxy(our.program, { change });
    run.after(() => proxy.stop());
    const context = await our.browser.newContext(PHONE);
    const editions = (page) => page.evaluate(async () => (await caches.keys()).map((name) => name.split(" ").at(-1)));
    try {
      const page = await context.newPage();
      await open(page, proxy.address);
      await kept(page);
      const [first] = await editions(page);
      edition = "next-";
      await page.evaluate(async () => { await (await navigator.serviceWorker.getRegistration()).update(); });
      await page.waitForFunction(() => document.documentElement.dataset.update === "waiting");
      assert.deepEqual((await editions(page)).sort(), [first, `next-${first}`].sort());
      await page.reload();
      await ready(page);
      assert.equal(await page.evaluate(async () => Boolean((await navigator.serviceWorker.getRegistration()).waiting)), true);

      // Closing the last page is what ends the old version.
      await page.close();
      const later = await context.newPage();
      await open(later, proxy.address);
      await until(async () => (await editions(later)).length === 1, "the old version is still kept");
      assert.deepEqual(await editions(later), [`next-${first}`]);

      // The keeper may also take it at once.
      edition = "third-";
      await later.evaluate(async () => { await (await navigator.serviceWorker.getRegistration()).update(); });
      await later.waitForFunction(() => document.documentElement.dataset.update === "waiting");
      await Promise.all([
        later.waitForEvent("load"),
        later.evaluate(() => { dispatchEvent(new Event("heapwright-take-update")); }),
      ]);
      await ready(later);
      await until(async () => (await editions(later)).length === 1, "the old version is still kept");
      assert.deepEqual(await editions(later), [`third-${first}`]);
    } finally {
      await context.close();
    }
  });

  test("a page that opens while the worker of the closed one is still busy has the new version", async (run) => {
    let edition = "";
    // The first version answers, and then is busy for longer than it takes to open the page anew.
    const busy = 'self.addEventListener("fetch", (event) => event.waitUntil(new Promise((done) => { setTimeout(done, 4000); })));\n';
    const change = (path, text) => {
      if (path === "/") return text.replace("<html", `$& data-edition="${edition}"`);
      return path === "/sw.js" ? text.replace(/const VERSION = "/, `${edition ? "" : busy}$&${edition}`) : text;
    };
    const proxy = await startProxy(our.program, { change });
    run.after(() => proxy.stop());
    const context = await our.browser.newContext(PHONE);
    try {
      const page = await context.newPage();
      await open(page, proxy.address);
      await kept(page);
      edition = "next-";
      await page.evaluate(async () => { await (await navigator.serviceWorker.getRegistration()).update(); });
      await page.waitForFunction(() => document.documentElement.dataset.update === "waiting");
      await page.reload();
      await ready(page);
      assert.equal(await page.evaluate(() => document.documentElement.dataset.edition), "", "a page that is open keeps its version");
      await page.close();
      const later = await context.newPage();
      const troubles = watch(later, proxy.address);
      await open(later, proxy.address);
      assert.equal(await later.evaluate(() => document.documentElement.dataset.edition), "next-");
      const names = () => later.evaluate(async () => (await caches.keys()).map((name) => name.split(" ").at(-1)));
      await until(async () => (await names()).length === 1, "the old version is still kept");
      assert.match((await names())[0], /^next-/);
      await later.waitForFunction(() => document.documentElement.dataset.update === undefined);
      await context.setOffline(true);
      await later.reload();
      await ready(later);
      assert.equal(await later.evaluate(() => document.documentElement.dataset.edition), "next-");
      assert.deepEqual(troubles, []);
    } finally {
      await context.close();
    }
  });
});

describe("without signal", () => {
  test("U14 after the program is gone: reload, new tab, deep link and a new start of the browser all open", async () => {
    const profile = await newProfile();
    const program = await startProgram();
    try {
      let context = await profile.open(PHONE);
      const page = context.pages()[0];
      await open(page, program.address);
      await kept(page);
      await program.kill();

      const troubles = watch(page, program.address);
      await page.reload();
      await ready(page);
      await open(await context.newPage(), program.address);
      await open(await context.newPage(), `${program.address}heap/3/reading`);
      await context.close();

      context = await profile.open(PHONE);
      const again = context.pages()[0];
      await open(again, `${program.address}stores`);
      await open(again, program.address);
      assert.equal(await again.getByRole("heading", { level: 1 }).count(), 1);
      assert.deepEqual(troubles, []);
      await context.close();
    } finally {
      await program.kill();
      await profile.remove();
    }
  });

  test("U13 nothing stands against installing, and the manifest has no fault", async () => {
    const profile = await newProfile();
    const program = await startProgram();
    try {
      const context = await profile.open();
      const page = context.pages()[0];
      await open(page, program.address);
      const devtools = await context.newCDPSession(page);
      const { errors, data } = await devtools.send("Page.getAppManifest");
      assert.deepEqual(errors, []);
      assert.equal(JSON.parse(data).name, "Heapwright");
      const { installabilityErrors } = await devtools.send("Page.getInstallabilityErrors");
      assert.deepEqual(installabilityErrors, []);
      await context.close();
    } finally {
      await program.kill();
      await profile.remove();
    }
  });
});

test("the program ends by itself when it is interrupted", async () => {
  const program = await startProgram();
  assert.equal((await fetch(program.address)).status, 200);
  assert.equal(await program.stop(), 0);
});
