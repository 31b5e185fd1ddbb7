import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { EmbeddedServer } from "../server";
import { openThrowaway } from "../server";
import { withClient } from "../server/postmaster";
import { applyMigrations } from "./apply";
import { diffSql, readModels } from "./diff";

const prismaFolder = join(dirname(fileURLToPath(import.meta.url)), "../../../../prisma");

/** What the models say, asked of the server's own catalogue. */
const CATALOGUE = {
  columns: `SELECT table_name, column_name, udt_name, is_nullable, column_default FROM information_schema.columns
            WHERE table_schema = 'public' AND is_generated = 'NEVER'`,
  keys: `SELECT conrelid::regclass::text AS "table", pg_get_constraintdef(oid) AS key FROM pg_constraint
         WHERE connamespace = 'public'::regnamespace AND contype IN ('p', 'u', 'f')`,
  values: `SELECT t.typname, string_agg(e.enumlabel, ',' ORDER BY e.enumsortorder) AS labels
           FROM pg_enum e JOIN pg_type t ON t.oid = e.enumtypid GROUP BY 1`,
  // Columns an index only carries along are beyond the models' words.
  indexes: `SELECT tablename, regexp_replace(replace(indexdef, indexname, ''), ' INCLUDE \\([^)]*\\)', '') AS definition FROM pg_indexes WHERE schemaname = 'public'`,
};

let server: EmbeddedServer;
let modelled: string;

beforeAll(async () => {
  server = await openThrowaway();
  await applyMigrations(server.ownerUrl, join(prismaFolder, "migrations"));
  const address = new URL(server.ownerUrl);
  address.pathname = "/modelled";
  modelled = address.toString();
  const sql = await diffSql(server.ownerUrl, "", await readModels(join(prismaFolder, "models")));
  await withClient(server.ownerUrl, (client) => client.query("CREATE DATABASE modelled"));
  // Migrations may add what models cannot say, extensions among it, on which modelled indexes may lean.
  const extensions = await rows(
    server.ownerUrl,
    "SELECT extname AS name FROM pg_extension WHERE extname <> 'plpgsql'",
  );
  for (const { name } of extensions) {
    await withClient(modelled, (client) => client.query(`CREATE EXTENSION "${name}"`));
  }
  await withClient(modelled, (client) => client.query(sql));
}, 120_000);

afterAll(() => server.close());

async function rows(url: string, sql: string): Promise<Record<string, string>[]> {
  return withClient(url, async (client) => (await client.query(sql)).rows);
}

function lines(found: Record<string, string>[]): string[] {
  return found
    .filter(
      ({ table, tablename, table_name }) => ![table, tablename, table_name].includes("_prisma_migrations"),
    )
    .map((row) => JSON.stringify(row))
    .sort();
}

describe("the database the migrations make", () => {
  test.each(["columns", "keys", "values"] as const)(
    "has the %s of the models and no others",
    async (what) => {
      const [migrated, wanted] = await Promise.all([
        rows(server.ownerUrl, CATALOGUE[what]),
        rows(modelled, CATALOGUE[what]),
      ]);
      expect(wanted.length).toBeGreaterThan(0);
      expect(lines(migrated)).toEqual(lines(wanted));
    },
  );

  test("has every index of the models", async () => {
    const [migrated, wanted] = await Promise.all([
      rows(server.ownerUrl, CATALOGUE.indexes),
      rows(modelled, CATALOGUE.indexes),
    ]);
    expect(lines(migrated)).toEqual(expect.arrayContaining(lines(wanted)));
  });

  test("has a comment on every table and column", async () => {
    const silent = await rows(
      server.ownerUrl,
      `SELECT c.relname AS "table", a.attname AS column FROM pg_class c
         LEFT JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped
        WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r' AND c.relname <> '_prisma_migrations'
          AND (obj_description(c.oid) IS NULL OR col_description(c.oid, a.attnum) IS NULL)`,
    );
    expect(silent).toEqual([]);
  });

  test("closes every table with a club to other clubs", async () => {
    const open = await rows(
      server.ownerUrl,
      `SELECT c.relname FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'club_id'
        WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace AND (NOT c.relrowsecurity
          OR NOT EXISTS (SELECT FROM pg_policy p WHERE p.polrelid = c.oid AND p.polname = 'club_isolation'))`,
    );
    expect(open).toEqual([]);
  });
});
