import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type pg from "pg";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import type { EmbeddedServer } from "../server";
import { openThrowaway } from "../server";
import { withClient } from "../server/postmaster";
import { applyMigrations } from "./apply";
import { MigrationError } from "./error";

let server: EmbeddedServer;
let url: string;
let folder: string;
let count = 0;

beforeAll(async () => {
  server = await openThrowaway();
}, 60_000);

afterAll(() => server.close());

beforeEach(async () => {
  const name = `case_${++count}`;
  await withClient(server.ownerUrl, (client) => client.query(`CREATE DATABASE ${name}`));
  const address = new URL(server.ownerUrl);
  address.pathname = `/${name}`;
  url = address.toString();
  folder = mkdtempSync(join(tmpdir(), "trunnion-migration-test-"));
  return () => rmSync(folder, { recursive: true });
});

function write(name: string, sql: string): void {
  mkdirSync(join(folder, name), { recursive: true });
  writeFileSync(join(folder, name, "migration.sql"), sql);
}

async function ask<T extends pg.QueryResultRow>(sql: string): Promise<T[]> {
  return withClient(url, async (client) => (await client.query<T>(sql)).rows);
}

const FIRST = "20250101000000_first";
const SECOND = "20250102000000_second";

describe("applying migrations", { timeout: 60_000 }, () => {
  test("applies what is new, in order, and nothing twice", async () => {
    write(FIRST, "CREATE TABLE car (n int);");
    expect(await applyMigrations(url, folder)).toEqual([FIRST]);
    write(SECOND, "ALTER TABLE car ADD COLUMN mark text;");
    expect(await applyMigrations(url, folder)).toEqual([SECOND]);
    expect(await applyMigrations(url, folder)).toEqual([]);
    expect(await ask("SELECT migration_name FROM _prisma_migrations ORDER BY 1")).toHaveLength(2);
  });

  test("reads semicolons in texts, comments and function bodies as what they are", async () => {
    write(
      FIRST,
      `-- cars; all of them
       CREATE TABLE car (n int);
       COMMENT ON TABLE car IS 'one car; one chassis';
       CREATE FUNCTION twice(n int) RETURNS int LANGUAGE plpgsql AS $$ BEGIN n := n * 2; RETURN n; END $$;`,
    );
    await applyMigrations(url, folder);
    expect(await ask("SELECT obj_description('car'::regclass) AS said, twice(4) AS eight")).toEqual([
      { said: "one car; one chassis", eight: 8 },
    ]);
  });

  test("two that start at once do not both migrate", async () => {
    write(FIRST, "CREATE TABLE car (n int); SELECT pg_sleep(0.3);");
    const [one, other] = await Promise.all([applyMigrations(url, folder), applyMigrations(url, folder)]);
    expect([...one, ...other]).toEqual([FIRST]);
  });

  test("a failing one leaves no trace, says the line and the server's words, and is tried again once mended", async () => {
    write(FIRST, "CREATE TABLE car (n int);");
    write(SECOND, "CREATE TABLE half (n int);\nALTER TABLE car ADD COLUMN nowhere nosuchtype;");
    await expect(applyMigrations(url, folder)).rejects.toThrow(
      /20250102000000_second.*line 2, "ALTER TABLE car ADD COLUMN nowhere nosuchtype;": type "nosuchtype" does not exist/,
    );
    expect(await ask("SELECT to_regclass('half') AS half")).toEqual([{ half: null }]);
    write(SECOND, "CREATE TABLE half (n int);");
    expect(await applyMigrations(url, folder)).toEqual([SECOND]);
  });

  test("one that was cut off by a kill is tried again", async () => {
    write(FIRST, "CREATE TABLE car (n int);");
    await applyMigrations(url, folder);
    write(SECOND, "CREATE TABLE door (n int);");
    await ask(
      `INSERT INTO _prisma_migrations (id, checksum, migration_name) VALUES ('cut-off', 'irrelevant', '${SECOND}')`,
    );
    expect(await applyMigrations(url, folder)).toEqual([SECOND]);
  });

  test("a migration changed after it was applied is refused by name", async () => {
    write(FIRST, "CREATE TABLE car (n int);");
    await applyMigrations(url, folder);
    write(FIRST, "CREATE TABLE car (n bigint);");
    await expect(applyMigrations(url, folder)).rejects.toThrow(/20250101000000_first was changed after/);
  });

  test("a database of a newer version is refused", async () => {
    write(FIRST, "CREATE TABLE car (n int);");
    write(SECOND, "CREATE TABLE door (n int);");
    await applyMigrations(url, folder);
    rmSync(join(folder, SECOND), { recursive: true });
    await expect(applyMigrations(url, folder)).rejects.toThrow(/20250102000000_second.*newer version/);
  });

  test("somebody else's database is left alone", async () => {
    await ask("CREATE TABLE theirs (n int)");
    write(FIRST, "CREATE TABLE car (n int);");
    await expect(applyMigrations(url, folder)).rejects.toThrow(/P3005/);
    expect(await ask("SELECT to_regclass('car') AS car")).toEqual([{ car: null }]);
  });

  test("where there is no connection, the place is named and the password is not", async () => {
    const wrong = new URL(url);
    wrong.password = "guess";
    const attempt = applyMigrations(wrong.toString(), folder);
    await expect(attempt).rejects.toThrow(
      /no connection to the database at 127\.0\.0\.1:\d+\/case_\d+ as trunnion_owner: pass/,
    );
    await expect(attempt).rejects.not.toThrow(/guess/);
    await expect(applyMigrations("nonsense", folder)).rejects.toThrow(/no postgresql:\/\/ URL/);
  });

  test.each([
    ["no-digits", "CREATE TABLE car (n int);", /no-digits: a migration is named by 14 digits/],
    [FIRST, undefined, /migration\.sql cannot be read/],
  ])("a folder %s that is no migration is refused by its path", async (name, sql, words) => {
    mkdirSync(join(folder, name));
    if (sql) write(name, sql);
    await expect(applyMigrations(url, folder)).rejects.toThrow(words);
    await expect(applyMigrations(url, join(folder, "missing"))).rejects.toThrow(MigrationError);
  });
});
