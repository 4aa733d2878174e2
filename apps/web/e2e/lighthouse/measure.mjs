// Lets Lighthouse look at the page as on a phone, five times, and writes the medians of what quality target U12 asks for as
// JSON. With --write they are also kept in docs/measurements. A missed gate ends with code 1.
// A folder of its own, for it is large and no test needs it: npm ci in this folder and in the one above, then node measure.mjs.
import { writeFile } from "node:fs/promises";
import os from "node:os";
import { launch } from "chrome-launcher";
import lighthouse from "lighthouse";
import { CHROMIUM, startProgram } from "../harness.js";

const REPEATS = 5;
// Least score of each category, of 100, and what is aimed at.
const ASKED = { performance: [90, 98], accessibility: [100, 100], "best-practices": [100, 100] };

const median = (values) => [...values].sort((one, other) => one - other)[Math.floor(values.length / 2)];

const program = await startProgram();
const scores = {};
const below = new Set();
let version;
let lost = 0;
try {
  for (let repeat = 0; repeat < REPEATS; repeat += 1) {
    const browser = await launch({ chromePath: CHROMIUM, chromeFlags: ["--headless=new", "--no-sandbox"] });
    try {
      const { lhr } = await lighthouse(program.address, { port: browser.port, onlyCategories: Object.keys(ASKED), logLevel: "error" });
      // Now and then the browser loses the beginning of a recording: that run says nothing.
      if (lhr.runtimeError?.code === "NO_NAVSTART" && lost < REPEATS) {
        lost += 1;
        repeat -= 1;
        continue;
      }
      if (lhr.runtimeError) throw new Error(lhr.runtimeError.message);
      version = lhr.lighthouseVersion;
      for (const name of Object.keys(ASKED)) (scores[name] ??= []).push(Math.round(lhr.categories[name].score * 100));
      for (const audit of Object.values(lhr.audits)) {
        if (audit.score !== null && audit.score < 0.9) below.add(audit.id);
      }
    } finally {
      browser.kill();
    }
  }
} finally {
  await program.stop();
}

const measured = Object.fromEntries(Object.entries(ASKED).map(([name, [gate, aim]]) =>
  [name, { gate, aim, median: median(scores[name]), runs: scores[name] }]));
const result = {
  what: "U12: Lighthouse as on a phone, medians of scores of 100",
  lighthouse: version,
  processors: os.cpus().length,
  runsLost: lost,
  measured,
  auditsBelow90InSomeRun: [...below].sort(),
};
const text = `${JSON.stringify(result, null, 2)}\n`;
process.stdout.write(text);
if (process.argv.includes("--write")) await writeFile(new URL("../../../../docs/measurements/lighthouse.json", import.meta.url), text);
if (Object.values(measured).some(({ gate, median }) => median < gate)) process.exitCode = 1;
