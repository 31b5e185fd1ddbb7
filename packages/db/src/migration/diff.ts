import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { NO_FILTER, withEngine } from "./engine";
import { MigrationError } from "./error";

/** Prisma models, as one text. */
export async function readModels(folder: string): Promise<string> {
  const names = (await readdir(folder)).filter((name) => name.endsWith(".prisma")).sort();
  if (names.length === 0) throw new MigrationError(`${folder} holds no .prisma file`);
  return (await Promise.all(names.map((name) => readFile(join(folder, name), "utf8")))).join("\n");
}

/**
 * The SQL that takes a database from one set of Prisma models to another; empty when they agree.
 *
 * @param before the models the database has now; empty text for a new database
 * @throws MigrationError when the engine cannot read either
 */
export async function diffSql(ownerUrl: string, before: string, after: string): Promise<string> {
  const models = (content: string) => ({
    tag: "schemaDatamodel" as const,
    files: [{ path: "models.prisma", content }],
  });
  const from = before === "" ? { tag: "empty" as const } : models(before);
  const { stdout } = await withEngine(ownerUrl, (engine) =>
    engine.diff({ from, to: models(after), script: true, exitCode: null, filters: NO_FILTER }),
  );
  const sql = (stdout ?? "").trim();
  return /^-- This is an empty migration\.?$/.test(sql) ? "" : sql;
}
