// npm run bench [-- group …]: measures, prints a table, writes JSON and prints its path. Not a test: nothing fails by time.
import { BootstrapFault, bootstrap } from "./bootstrap.mjs";
import { importSource } from "./source.mjs";

try {
  await bootstrap((line) => console.error(line));
  await importSource("apps/cli/src/bench/main.ts");
} catch (error) {
  console.error(error instanceof BootstrapFault ? error.message : error);
  process.exitCode = error instanceof BootstrapFault ? 1 : 70;
}
