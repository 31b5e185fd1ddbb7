// Where a topic has more mutants than a busy machine gets through: `node mutation/sample.mjs <topic> <count> [seed]`
// prints the ranges of that many mutants drawn at random, for `npm run mutation -w @trunnion/calc -- --mutate "$(…)"`.
// The same seed draws the same. What lies within a range drawn (the parts of a condition) is tested with it.
import { readdirSync, readFileSync } from "node:fs";
import { Instrumenter } from "@stryker-mutator/instrumenter";
import stryker from "../stryker.config.mjs";

const [topic = "", count = "", seed = "1"] = process.argv.slice(2);
if (topic === "" || !(Number(count) > 0)) {
  console.error("node mutation/sample.mjs <topic> <count> [seed]");
  process.exit(1);
}
const home = new URL("..", import.meta.url).pathname;
const tested = (name) => name.endsWith(".ts") && !/\.(?:test|fixture)\.ts$/.test(name);
const files = readdirSync(`${home}src/${topic}`, { recursive: true })
  .filter(tested)
  .sort()
  .map((name) => `src/${topic}/${name}`);

const silent = Object.fromEntries(
  ["debug", "info", "warn", "error", "isDebugEnabled"].map((name) => [name, () => false]),
);
const { mutants } = await new Instrumenter(silent).instrument(
  files.map((name) => ({ name: home + name, mutate: true, content: readFileSync(home + name, "utf8") })),
  { ignorers: [], plugins: null, ...stryker.mutator },
);

/** Marsaglia's xorshift, 32 bits (Journal of Statistical Software 8 (2003), 14): enough to draw lots. */
let state = Number(seed) * 2654435761;
const random = () => {
  state ^= state << 13;
  state ^= state >>> 17;
  state ^= state << 5;
  return (state >>> 0) / 2 ** 32;
};
for (let warm = 0; warm < 20; warm += 1) random();

const drawn = mutants
  .filter(({ ignoreReason, statusReason }) => (ignoreReason ?? statusReason) === undefined)
  .map((mutant) => ({ mutant, lot: random() }))
  .sort((a, b) => a.lot - b.lot)
  .slice(0, Number(count))
  .map(
    ({
      mutant: {
        fileName,
        location: { start, end },
      },
    }) => {
      const at = ({ line, column }) => `${line + 1}:${column}`;
      return `${fileName.slice(home.length)}:${at(start)}-${at(end)}`;
    },
  );
console.error(`${drawn.length} of ${mutants.length} mutants of ${topic}, seed ${seed}`);
console.log([...new Set(drawn)].join(","));
