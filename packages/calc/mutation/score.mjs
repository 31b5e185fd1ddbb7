// Prints mutation scores per topic, from the results kept in reports/mutation.
import { readFileSync } from "node:fs";

const file = process.argv[2] ?? new URL("../reports/mutation/incremental.json", import.meta.url).pathname;
const { files } = JSON.parse(readFileSync(file, "utf8"));
const found = new Set(["Killed", "Timeout"]);
const counted = new Set([...found, "Survived", "NoCoverage"]);

const topics = new Map();
for (const [path, { mutants }] of Object.entries(files)) {
  const topic = /^src\/([^/]+)\//.exec(path)?.[1] ?? path;
  const tally = topics.get(topic) ?? { killed: 0, total: 0 };
  for (const { status } of mutants) {
    if (found.has(status)) tally.killed += 1;
    if (counted.has(status)) tally.total += 1;
  }
  topics.set(topic, tally);
}

const line = (name, { killed, total }) =>
  `${name.padEnd(12)} ${String(killed).padStart(6)} / ${String(total).padEnd(6)} ${((100 * killed) / total).toFixed(1)} %`;
const rows = [...topics].filter(([, { total }]) => total > 0).sort(([a], [b]) => a.localeCompare(b));
const sum = (key) => rows.reduce((all, [, tally]) => all + tally[key], 0);
for (const [topic, tally] of rows) console.log(line(topic, tally));
console.log(line("all", { killed: sum("killed"), total: sum("total") }));
