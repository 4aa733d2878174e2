// Measures the simulated heap as the browser runs it: time of single runs, of a whole question, and memory. It runs the
// bundled module in Node, which has the compiler of Chromium. A missed gate ends with code 1.
import { readFileSync } from "node:fs";
import os from "node:os";
import { simulator } from "./simulator.js";

const REPEATS = 5;
// One run on the usual grid, and the memory of it all.
const GATE_MS = 500;
const GATE_MIB = 50;
const MIB = 2 ** 20;
const ROOT = new URL("../../../", import.meta.url);

const rounded = (value) => Math.round(value * 10) / 10;
const median = (values) => [...values].sort((one, other) => one - other)[Math.floor(values.length / 2)];

function timed(work) {
  const start = performance.now();
  const result = work();
  return [performance.now() - start, result];
}

/** A fixed piece of arithmetic: figures of another machine compare after scaling by it. */
function calibration() {
  return median(Array.from({ length: REPEATS }, () => timed(() => {
    let sum = 0;
    for (let index = 1; index < 2e7; index += 1) sum += Math.sqrt(index) / index;
    return sum;
  })[0]));
}

/** A heap of a cubic metre for 120 days, from the example, cut as told. */
function longCase(layers, rings) {
  const heap = JSON.parse(readFileSync(new URL("crates/wire/examples/simulate-one-cubic-metre-at-15.json", ROOT), "utf8"));
  delete heap.ensemble;
  return JSON.stringify({ ...heap, days: 120, model: "spatial", layers, rings });
}

function question(journal, heap, now) {
  return JSON.stringify({ journal, heap, now, turn: 0, water: false, us_units: false, width_px: 320 });
}

const { module, memory } = await simulator();
const figures = { cores: os.cpus().length, load_at_start: rounded(os.loadavg()[0]), calibration_ms: rounded(calibration()), runs: {}, questions: {} };

for (const [layers, rings] of [[10, 10], [6, 4], [4, 3], [3, 2]]) {
  const text = longCase(layers, rings);
  module.simulate(text);
  figures.runs[`120 days, ${layers} x ${rings}`] = rounded(median(Array.from({ length: REPEATS }, () => timed(() => module.simulate(text))[0])));
}

const journal = readFileSync(new URL("dist/demo.jsonl", ROOT), "utf8").trimEnd();
const heaps = journal.split("\n").map((line) => JSON.parse(line)).filter((event) => event.kind === "heap_started");
for (const heap of heaps.slice(-2)) {
  const [readMs, outlook] = timed(() => new module.Outlook(question(journal, heap.id, "2026-11-15T18:00:00+00:00")));
  const steps = [];
  const shown = [];
  while (outlook.done < outlook.all) {
    const [ms, text] = timed(() => outlook.step());
    steps.push(ms);
    if (text) shown.push({ runs: outlook.done, after_ms: rounded(readMs + steps.reduce((sum, one) => sum + one, 0)), kib: rounded(text.length / 1024) });
  }
  figures.questions[heap.body.name] = { read_ms: rounded(readMs), longest_step_ms: rounded(Math.max(...steps)), median_run_ms: rounded(median(steps)), shown };
  outlook.free();
}
figures.memory_mib = rounded(memory.buffer.byteLength / MIB);

const usual = figures.runs["120 days, 6 x 4"];
figures.gates = {
  [`one run of 120 days on the usual grid, at most ${GATE_MS} ms`]: usual <= GATE_MS,
  [`memory, at most ${GATE_MIB} MiB`]: figures.memory_mib <= GATE_MIB,
};
console.log(JSON.stringify(figures, null, 2));
process.exitCode = Object.values(figures.gates).every(Boolean) ? 0 : 1;
