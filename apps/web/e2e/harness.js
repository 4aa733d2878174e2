// The rig of the browser tests: the real program on a free port, a real browser, and the checks that every screen shares.
import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { once } from "node:events";
import { readFileSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import http from "node:http";
import { createRequire } from "node:module";
import os from "node:os";
import path from "node:path";
import { after, before, test } from "node:test";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const ROOT = fileURLToPath(new URL("../../../", import.meta.url));
export const PROGRAM = process.env.HEAPWRIGHT_BIN ?? path.join(ROOT, "target/debug/heapwright");
export const CHROMIUM = process.env.HEAPWRIGHT_CHROMIUM ?? "/usr/bin/chromium";
const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

const FLAGS = [
  "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage",
];

// Longest that the program or the page may take to be there [ms]; far above what is usual, for slow machines.
export const PATIENCE_MS = 30_000;

// Quality target U1: each screen is looked at in each of these.
export const WIDTHS_PX = [320, 360, 412, 1280];
export const THEMES = [
  { name: "light", media: { colorScheme: "light", forcedColors: "none" } },
  { name: "dark", media: { colorScheme: "dark", forcedColors: "none" } },
  { name: "forced colours", media: { colorScheme: "dark", forcedColors: "active" } },
];
export const DIRECTIONS = ["ltr", "rtl"];
const AXE_TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

// A phone between a small and a large one.
export const PHONE = { viewport: { width: 360, height: 740 }, deviceScaleFactor: 2, hasTouch: true, isMobile: true };

/** Starts `heapwright serve`; port 0 takes a free one. Resolves once the program has printed its address. */
export async function startProgram({ port = 0 } = {}) {
  const child = spawn(PROGRAM, ["serve", "--port", String(port)], { stdio: ["ignore", "pipe", "pipe"] });
  let said = "";
  const address = await new Promise((resolve, reject) => {
    const fail = (why) => reject(new Error(`${PROGRAM} serve: ${why}\n${said}`));
    const timer = setTimeout(() => fail("printed no address in time"), PATIENCE_MS);
    const listen = (chunk) => {
      said += chunk;
      const found = said.match(/http:\/\/127\.0\.0\.1:\d+/);
      if (!found) return;
      clearTimeout(timer);
      resolve(`${found[0]}/`);
    };
    child.stdout.on("data", listen);
    child.stderr.on("data", listen);
    child.on("error", (error) => fail(`could not be started: ${error.message}`));
    child.on("exit", (code) => fail(`ended with code ${code}`));
  });
  return {
    address,
    port: Number(new URL(address).port),
    /** Ends the program the hard way, as a flat battery would, and makes sure that nobody answers any more. */
    async kill() {
      if (child.exitCode === null && child.signalCode === null) {
        child.kill("SIGKILL");
        await once(child, "exit");
      }
      const answered = await fetch(address).then(() => true, () => false);
      if (answered) throw new Error(`${address} still answers after the program was killed`);
    },
    /** Asks the program to end; resolves to its exit code, or to null when a signal ended it. */
    async stop() {
      child.kill("SIGINT");
      const [code] = await once(child, "exit");
      return code;
    },
  };
}

/**
 * A proxy in front of the program: under a path of its own, and able to change answers on the way.
 * `change(path, text)` may return another text for scripts and pages.
 */
export async function startProxy(program, { prefix = "/", change = (_path, text) => text } = {}) {
  const server = http.createServer((request, response) => {
    if (!request.url.startsWith(prefix)) {
      response.writeHead(404).end();
      return;
    }
    const inner = `/${request.url.slice(prefix.length)}`;
    const headers = { ...request.headers, host: `127.0.0.1:${program.port}`, "accept-encoding": "identity" };
    delete headers["if-none-match"];
    const onward = http.request({ port: program.port, host: "127.0.0.1", path: inner, method: request.method, headers }, (answer) => {
      const parts = [];
      answer.on("data", (part) => parts.push(part));
      answer.on("end", () => {
        let body = Buffer.concat(parts);
        if (/javascript|html/.test(answer.headers["content-type"] ?? "")) body = Buffer.from(change(inner, body.toString()));
        response.writeHead(answer.statusCode, { ...answer.headers, "content-length": body.length }).end(body);
      });
    });
    onward.on("error", () => response.writeHead(502).end());
    request.pipe(onward);
  });
  server.listen(0, "127.0.0.1");
  await once(server, "listening");
  return {
    address: `http://127.0.0.1:${server.address().port}${prefix}`,
    async stop() {
      server.closeAllConnections();
      server.close();
      await once(server, "close");
    },
  };
}

/** A browser without a profile: each context is a first visit. */
export function openBrowser() {
  return chromium.launch({ executablePath: CHROMIUM, args: FLAGS });
}

/** A profile folder that outlives the browser, for repeat visits and installs. */
export async function newProfile() {
  const folder = await mkdtemp(path.join(os.tmpdir(), "heapwright-profile-"));
  return {
    open: (options = {}) => chromium.launchPersistentContext(folder, { executablePath: CHROMIUM, args: FLAGS, ...options }),
    remove: () => rm(folder, { recursive: true, force: true, maxRetries: 5 }),
  };
}

/**
 * The program and a browser for all tests of a file, whose contexts are made by `options`. `visiting` makes a first visit a
 * test of its own, which fails also when the page complains of what `expected` does not match; `prepare` is run in the context
 * before the page is opened, and other options are of this context alone. A test may take `mostMs`.
 */
export function rig(options = PHONE, mostMs = undefined) {
  const rig = {
    visiting(name, steps, { prepare, expected, timeout = mostMs, ...own } = {}) {
      test(name, { timeout }, async (run) => {
        const context = await rig.browser.newContext({ ...options, ...own });
        try {
          await prepare?.(context);
          const page = await context.newPage();
          const troubles = watch(page, rig.program.address);
          await open(page, rig.program.address);
          await steps(page, context, run);
          assert.deepEqual(troubles.filter((trouble) => !expected?.test(trouble)), []);
        } finally {
          await context.close();
        }
      });
    },
  };
  before(async () => {
    rig.program = await startProgram();
    rig.browser = await openBrowser();
  });
  after(async () => {
    await rig.browser?.close();
    await rig.program?.kill();
  });
  return rig;
}

/** Collects what should never happen: console errors, refused content, uncaught errors, requests to other places. */
export function watch(page, address) {
  const troubles = [];
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) troubles.push(`console ${message.type()}: ${message.text()}`);
  });
  page.on("pageerror", (error) => troubles.push(`uncaught: ${error.message}`));
  page.on("request", (request) => {
    if (/^(blob|data):/.test(request.url()) || request.url().startsWith(address)) return;
    troubles.push(`request to another place: ${request.url()}`);
  });
  return troubles;
}

/** Opens an address and waits until the page has started. */
export async function open(page, address) {
  const response = await page.goto(address);
  await ready(page);
  return response;
}

/** Waits until the wasm runs and the first screen is there. */
export function ready(page) {
  return page.waitForFunction(() => document.documentElement.dataset.state === "ready", null, { timeout: PATIENCE_MS });
}

/** Waits until the page is kept on the device. */
export function kept(page) {
  return page.waitForFunction(() => navigator.serviceWorker.controller?.state === "activated", null, { timeout: PATIENCE_MS });
}

/** Waits until something asked again and again is so. (The browser driver takes the promise of an answer for a yes.) */
export async function until(isSo, otherwise) {
  for (const end = Date.now() + PATIENCE_MS; Date.now() < end;) {
    if (await isSo()) return;
    await new Promise((resolve) => { setTimeout(resolve, 50); });
  }
  throw new Error(otherwise);
}

/**
 * Runs axe under the page's own policy (a script element would be refused). Returns what it calls wrong, and what it could
 * not decide; `undecided` names the rule, the reason and, for the verdicts, whether the element matches each of `selectors`.
 */
export async function axe(page, selectors = []) {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(AXE);
  return page.evaluate(async ([tags, selectors]) => {
    const result = await window.axe.run(document, {
      runOnly: { type: "tag", values: tags }, resultTypes: ["violations", "incomplete"], elementRef: true,
    });
    const violations = result.violations
      .map((rule) => `${rule.id}: ${rule.help} (${rule.nodes.map((node) => node.target.join(" ")).join(", ")})`);
    const undecided = result.incomplete.flatMap((rule) => rule.nodes.map((node) => {
      const checks = [...node.any, ...node.all, ...node.none];
      const reason = checks.map((check) => check.data?.messageKey ?? check.id).join(" ");
      return { rule: rule.id, reason, target: node.target.join(" "), matches: selectors.filter((selector) => node.element?.matches(selector)) };
    }));
    return { violations, undecided };
  }, [AXE_TAGS, selectors]);
}

/** Runs axe in every width, theme and direction; returns a line for each violation, and all that was undecided. */
export async function axeEverywhere(page, selectors = []) {
  const found = { violations: [], undecided: [] };
  for (const direction of DIRECTIONS) {
    await page.evaluate((dir) => document.documentElement.setAttribute("dir", dir), direction);
    for (const { name, media } of THEMES) {
      await page.emulateMedia(media);
      for (const width of WIDTHS_PX) {
        await page.setViewportSize({ width, height: 740 });
        const { violations, undecided } = await axe(page, selectors);
        const where = `${width} px, ${name}, ${direction}`;
        for (const violation of violations) found.violations.push(`${where}: ${violation}`);
        for (const one of undecided) found.undecided.push({ ...one, where });
      }
    }
  }
  return found;
}

/** By how much the page is wider than the window [px]; quality target U6 asks for 0. */
export function sidewaysScroll(page) {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** Slows the processor by a factor and, when asked, the network to slow 4G (150 ms, 1.6 Mbit/s). */
export async function slow(page, { cpu = 1, network = false } = {}) {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("Emulation.setCPUThrottlingRate", { rate: cpu });
  if (!network) return;
  await devtools.send("Network.enable");
  await devtools.send("Network.emulateNetworkConditions", {
    offline: false, latency: 150, downloadThroughput: 1_600_000 / 8, uploadThroughput: 750_000 / 8,
  });
}
