import { mkdir, writeFile } from "node:fs/promises";
import { cpus, loadavg } from "node:os";
import { join } from "node:path";
import { linkageBench } from "@trunnion/calc/bench";
import { sheetsBench } from "@trunnion/sheets/bench";
import { dataFolder } from "../start/place";
import { archiveBench } from "./archive";
import { engineBench } from "./engine";
import { fleetBench } from "./fleet";
import { importBench } from "./import";
import type { BenchRow } from "./row";
import { sliderBench } from "./slider";
import { typingBench } from "./typing";

interface Group {
  readonly run: () => Promise<readonly BenchRow[]>;
  /** What it measures, in a few words. */
  readonly what: string;
}

const groups: Readonly<Record<string, Group>> = {
  linkage: { run: linkageBench, what: "positions of a suspension, against a general-purpose solver" },
  engine: { run: engineBench, what: "state, deviations, checks and consequences of a car" },
  sheets: { run: sheetsBench, what: "sheets of an event as PDF, against a PDF library and a browser" },
  import: { run: importBench, what: "reading in 10,000 and 100,000 rows, against COPY of the same rows" },
  fleet: {
    run: fleetBench,
    what: "questions across clubs of 100 to 100,000 cars, against their own SQL by a bare driver",
  },
  archive: { run: archiveBench, what: "writing and reading a club's archive, with the memory it takes" },
  slider: { run: sliderBench, what: "one step of a slider: every consequence of a change" },
  typing: { run: typingBench, what: "typing into the search of a large register, against a bare field" },
};

const help = `npm run bench [-- group …]

Measures, beside a peer of the same run, prints the figures and writes them as JSON. Without a group: all of them, which
takes half an hour and more.

Groups
${Object.entries(groups)
  .map(([name, { what }]) => `  ${name.padEnd(9)}${what}`)
  .join("\n")}

Options
  -h, --help   this

Environment
  TRUNNION_BENCH_CARS=2000,20000   sizes of the clubs that fleet makes, instead of 100,10000,100000
  TRUNNION_DATA=<folder>           where the figures are written, under bench/`;

const figure = (value: number) => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));

function line({ name, value, unit, peer, ratio }: BenchRow): string {
  const against = peer === undefined ? "" : `  ${peer.name}: ${figure(peer.value)} ${unit}`;
  const times = ratio === undefined ? "" : `  × ${figure(ratio)}`;
  return `  ${name.padEnd(64)} ${figure(value).padStart(9)} ${unit.padEnd(4)}${against}${times}`;
}

const words = process.argv.slice(2);
if (words.some((word) => word === "--help" || word === "-h")) {
  console.log(help);
  process.exit(0);
}
const unknown = words.filter((word) => !Object.hasOwn(groups, word));
if (unknown.length > 0) {
  console.error(
    `There is no group ${unknown.join(", ")}. Groups: ${Object.keys(groups).join(", ")}. See --help.`,
  );
  process.exit(1);
}

const wanted = words.length === 0 ? Object.keys(groups) : words;
const rows: BenchRow[] = [];
console.log(
  `${cpus().length} cores, load ${loadavg()[0]?.toFixed(1)} at the start; every ratio is against a peer of this run.`,
);
for (const name of wanted) {
  const measured = (await groups[name]?.run()) ?? [];
  rows.push(...measured);
  console.log([name, ...measured.map(line)].join("\n"));
}
const folder = join(dataFolder(), "bench");
await mkdir(folder, { recursive: true });
const path = join(folder, `${new Date().toISOString().replace(/[:.]/g, "-")}.json`);
const machine = { node: process.version, cores: cpus().length, load: loadavg() };
await writeFile(path, `${JSON.stringify({ machine, rows }, null, 2)}\n`);
console.log(path);
