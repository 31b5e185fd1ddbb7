// npm run -s trunnion -- …: standard output is the command's own; whatever is done before is told on standard error.
import { BootstrapFault, bootstrap } from "./bootstrap.mjs";
import { importSource } from "./source.mjs";

try {
  await bootstrap((line) => console.error(line));
  await importSource("apps/cli/src/main.ts");
} catch (error) {
  console.error(error instanceof BootstrapFault ? error.message : error);
  process.exitCode = error instanceof BootstrapFault ? 1 : 70;
}
