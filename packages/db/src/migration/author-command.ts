import { dirname, relative } from "node:path";
import { migrationsFolder } from "../folder";
import { authorMigration } from "./author";
import { MigrationError } from "./error";

try {
  const input = { name: process.argv[2] ?? "", prismaFolder: dirname(migrationsFolder), now: new Date() };
  const path = await authorMigration(input);
  const said = path
    ? `Wrote ${relative(process.cwd(), path)}; read it before you commit it.`
    : "The models have not changed.";
  process.stdout.write(`${said}\n`);
} catch (error) {
  if (!(error instanceof MigrationError)) throw error;
  process.stderr.write(`${error.message}\n`);
  process.exitCode = 1;
}
