// npm start: installs what is missing, then serves. Plain Node until the packages are there.
import { BootstrapFault, bootstrap } from "./bootstrap.mjs";
import { importSource } from "./source.mjs";

try {
  await bootstrap((line) => console.log(line));
  const { main } = await importSource("apps/cli/src/start/main.ts");
  await main(process.argv.slice(2));
} catch (error) {
  console.error(error instanceof BootstrapFault ? error.message : error);
  process.exitCode = error instanceof BootstrapFault ? 1 : 70;
}
