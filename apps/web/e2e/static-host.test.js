// The page as plain files: any host, any path, no header of ours; kept for use without signal; installable.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { createReadStream } from "node:fs";
import { mkdtemp, readFile, rm, stat } from "node:fs/promises";
import http from "node:http";
import os from "node:os";
import path from "node:path";
import { after, before, describe, test } from "node:test";
import { fileURLToPath } from "node:url";
import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { kept, newProfile, open, openBrowser, PHONE, ready, watch } from "./harness.js";
import { note, opened, startHeap, texts, toHeap } from "./journal.js";
import { goTo } from "./keeper.js";

const ROOT = fileURLToPath(new URL("../../../", import.meta.url));
const PREFIX = "/some/deep/path/";
const TYPES = { html: "text/html", js: "text/javascript", css: "text/css", wasm: "application/wasm", svg: "image/svg+xml", png: "image/png", webmanifest: "application/manifest+json" };

let folder;
let browser;

before(async () => {
  folder = await mkdtemp(path.join(os.tmpdir(), "heapwright-static-"));
  execFileSync("cargo", ["xtask", "static", "--output", folder, "--as-bundled"], { cwd: ROOT, stdio: ["ignore", "ignore", "inherit"] });
  browser = await openBrowser();
});

after(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

/** The plainest of hosts: files below a path, a type by their suffix, no other header; "not found" for all else. */
async function host(files) {
  const asked = [];
  const server = http.createServer(async (request, response) => {
    const { pathname } = new URL(request.url, "http://localhost");
    asked.push(pathname);
    const name = pathname.startsWith(PREFIX) ? pathname.slice(PREFIX.length) || "index.html" : "";
    const file = path.join(files, name);
    const is = name && !name.includes("..") && await stat(file).then((found) => found.isFile(), () => false);
    if (!is) return response.writeHead(404).end();
    response.writeHead(200, { "content-type": TYPES[name.split(".").at(-1)] ?? "application/octet-stream" });
    return createReadStream(file).pipe(response);
  });
  server.listen(0, "127.0.0.1");
  await new Promise((resolve) => { server.once("listening", resolve); });
  return {
    address: `http://127.0.0.1:${server.address().port}${PREFIX}`,
    asked,
    stop: () => new Promise((resolve) => {
      server.closeAllConnections();
      server.close(resolve);
    }),
  };
}

describe("plain files on any host", () => {
  test("below a deep path: opens under its own policy, is kept, and opens again when the host is gone", async () => {
    const plainHost = await host(folder);
    const context = await browser.newContext(PHONE);
    try {
      const page = await context.newPage();
      const troubles = watch(page, plainHost.address);
      await open(page, plainHost.address);
      await kept(page);
      await startHeap(page, "Bin 1");
      await toHeap(page, "Bin 1");
      await note(page, "with a signal");
      assert.ok(plainHost.asked.every((one) => one.startsWith(PREFIX)), "nothing outside its path is asked for");
      await plainHost.stop();
      await context.setOffline(true);
      await page.reload();
      await ready(page);
      await opened(page);
      await note(page, "without");
      assert.deepEqual(await texts(page), ["Note on Bin 1: without", "Note on Bin 1: with a signal", "Started Bin 1"]);
      const other = await context.newPage();
      await open(other, `${plainHost.address}#/settings`);
      await other.getByRole("heading", { level: 1, name: "Settings" }).waitFor();
      await goTo(other, "Balance");
      assert.deepEqual(troubles, []);
    } finally {
      await context.close();
    }
  });

  test("its policy refuses what is not the page's own, although the host sends none", async () => {
    const plainHost = await host(folder);
    const context = await browser.newContext(PHONE);
    try {
      const page = await context.newPage();
      await open(page, plainHost.address);
      const ran = await page.evaluate(async () => {
        const script = document.createElement("script");
        script.textContent = "window.ran = true";
        document.body.append(script);
        const elsewhere = await fetch("http://127.0.0.1:9/").then(() => "fetched", (error) => error.name);
        return [window.ran ?? false, elsewhere];
      });
      assert.deepEqual(ran, [false, "TypeError"]);
      const refused = await page.evaluate(() => new Promise((told) => {
        document.addEventListener("securitypolicyviolation", (event) => told(event.effectiveDirective));
        document.body.setAttribute("style", "color: red");
        const image = new Image();
        image.src = "http://127.0.0.1:9/a.png";
      }));
      assert.match(refused, /^(style-src-attr|img-src)$/);
    } finally {
      await context.close();
      await plainHost.stop();
    }
  });

  test("compressed forms are the files they stand beside, and the notes name every header of the program", async () => {
    const index = await readFile(path.join(folder, "index.html"));
    assert.deepEqual(brotliDecompressSync(await readFile(path.join(folder, "index.html.br"))), index);
    assert.deepEqual(gunzipSync(await readFile(path.join(folder, "index.html.gz"))), index);
    const notes = await readFile(path.join(folder, "HEADERS.txt"), "utf8");
    for (const name of ["content-security-policy", "permissions-policy", "x-content-type-options: nosniff", "referrer-policy", "immutable", "no-cache"]) {
      assert.ok(notes.includes(name), name);
    }
  });

  test("U13 can be installed from there: no fault in the manifest, icons that are what it says, shortcuts that lead to places", async () => {
    const plainHost = await host(folder);
    const profile = await newProfile();
    try {
      const context = await profile.open();
      const page = context.pages()[0];
      await open(page, plainHost.address);
      await kept(page);
      const devtools = await context.newCDPSession(page);
      const { errors, data } = await devtools.send("Page.getAppManifest");
      assert.deepEqual(errors, []);
      const { installabilityErrors } = await devtools.send("Page.getInstallabilityErrors");
      assert.deepEqual(installabilityErrors, []);
      const manifest = JSON.parse(data);
      const within = (reference) => new URL(reference, plainHost.address).href.startsWith(plainHost.address);
      assert.ok([manifest.id, manifest.start_url, manifest.scope, ...manifest.shortcuts.map((one) => one.url)].every(within));
      assert.ok(manifest.icons.some((icon) => icon.purpose === "maskable"));
      for (const icon of manifest.icons.filter((one) => one.type === "image/png")) {
        const size = await page.evaluate(async (address) => {
          const { width, height } = await createImageBitmap(await (await fetch(address)).blob());
          return `${width}x${height}`;
        }, new URL(icon.src, plainHost.address).href);
        assert.equal(size, icon.sizes, icon.src);
      }
      for (const shortcut of manifest.shortcuts) {
        await open(page, new URL(shortcut.url, plainHost.address).href);
        assert.equal(await page.getByRole("heading", { level: 1 }).count(), 1, shortcut.name);
      }
      await context.close();
    } finally {
      await profile.remove();
      await plainHost.stop();
    }
  });
});
