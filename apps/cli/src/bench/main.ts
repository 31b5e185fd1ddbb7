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

const groups: Readonly<Record<string, () => Promise<readonly BenchRow[]>>> = {
  linkage: linkageBench,
  engine: engineBench,
  sheets: sheetsBench,
  import: importBench,
  fleet: fleetBench,
  archive: archiveBench,
  slider: sliderBench,
};

const figure = (value: number) => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));

function line({ name, value, unit, peer, ratio }: BenchRow): string {
  const against = peer === undefined ? "" : `  ${peer.name}: ${figure(peer.value)} ${unit}`;
  const times = ratio === undefined ? "" : `  × ${figure(ratio)}`;
  return `  ${name.padEnd(64)} ${figure(value).padStart(9)} ${unit.padEnd(4)}${against}${times}`;
}

const asked = process.argv.slice(2).filter((word) => !word.startsWith("-"));
const unknown = asked.filter((name) => !(name in groups));
if (unknown.length > 0) {
  console.error(`There is no group ${unknown.join(", ")}. Groups: ${Object.keys(groups).join(", ")}.`);
  process.exit(1);
}

const wanted = asked.length === 0 ? Object.keys(groups) : asked;
const rows: BenchRow[] = [];
console.log(
  `${cpus().length} cores, load ${loadavg()[0]?.toFixed(1)} at the start; every ratio is against a peer of this run.`,
);
for (const name of wanted) {
  const measured = (await groups[name]?.()) ?? [];
  rows.push(...measured);
  console.log([name, ...measured.map(line)].join("\n"));
}
const folder = join(dataFolder(), "bench");
await mkdir(folder, { recursive: true });
const path = join(folder, `${new Date().toISOString().replace(/[:.]/g, "-")}.json`);
const machine = { node: process.version, cores: cpus().length, load: loadavg() };
await writeFile(path, `${JSON.stringify({ machine, rows }, null, 2)}\n`);
console.log(path);
