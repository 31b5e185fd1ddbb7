// Writes the next migration: node packages/db/bin/author-migration.mjs add_event_class
import { spawnSync } from "node:child_process";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const command = join(here, "../src/migration/author-command.ts");
const { status } = spawnSync(process.execPath, ["--import", "tsx", command, ...process.argv.slice(2)], {
  cwd: join(here, "../../.."),
  stdio: "inherit",
});
process.exitCode = status ?? 1;
