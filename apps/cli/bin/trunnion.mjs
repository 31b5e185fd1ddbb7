// npm run -s trunnion -- …: standard output is the command's own; whatever is done before is told on standard error.
import { bootstrap, withTypeScript } from "./bootstrap.mjs";

try {
  await bootstrap((line) => console.error(line));
  await withTypeScript();
} catch (error) {
  console.error(error.message);
  process.exit(1);
}
await import("../src/main.ts");
