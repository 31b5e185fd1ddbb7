// npm start: installs what is missing, then serves. Plain Node until the packages are there.
import { BootstrapFault, bootstrap, withTypeScript } from "./bootstrap.mjs";

try {
  await bootstrap((line) => console.log(line));
  await withTypeScript();
  const { main } = await import("../src/start/main.ts");
  await main(process.argv.slice(2));
} catch (error) {
  console.error(error instanceof BootstrapFault ? error.message : error);
  process.exitCode = error instanceof BootstrapFault ? 1 : 70;
}
