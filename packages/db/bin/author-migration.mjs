// Writes the next migration: node packages/db/bin/author-migration.mjs add_event_class
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { register } from "tsx/esm/api";

register();
const here = dirname(fileURLToPath(import.meta.url));
const { authorMigration, MigrationError } = await import("../src/migration/index.ts");

try {
  const prismaFolder = join(here, "../../../prisma");
  const path = await authorMigration({ name: process.argv[2] ?? "", prismaFolder, now: new Date() });
  console.log(
    path
      ? `Wrote ${relative(process.cwd(), path)}; read it before you commit it.`
      : "The models have not changed.",
  );
} catch (error) {
  if (!(error instanceof MigrationError)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}
