import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { authorMigration } from "./author";

let prismaFolder: string;

beforeEach(() => {
  prismaFolder = mkdtempSync(join(tmpdir(), "trunnion-author-test-"));
  mkdirSync(join(prismaFolder, "models"));
});

afterEach(() => rmSync(prismaFolder, { recursive: true }));

function writeModels(more: string): void {
  const text = `
datasource db {
  provider = "postgresql"
}

/// A car; what else.
model Car {
  /// Club it belongs to.
  clubId String @map("club_id") @db.Uuid
  /// Its key.
  id     String @db.Uuid
${more}
  @@id([clubId, id])
  @@map("car")
}
`;
  writeFileSync(join(prismaFolder, "models", "car.prisma"), text);
}

const at = (day: number) => new Date(Date.UTC(2025, 0, day));

describe("writing a migration", { timeout: 120_000 }, () => {
  test("holds the tables, a comment for each table and column, and row-level security", async () => {
    writeModels("");
    const path = await authorMigration({ name: "first", prismaFolder, now: at(1) });
    expect(path).toBe(join(prismaFolder, "migrations", "20250101000000_first", "migration.sql"));
    const sql = readFileSync(path ?? "", "utf8");
    expect(sql).toContain('CREATE TABLE "car"');
    expect(sql).toContain(`COMMENT ON TABLE "car" IS 'A car; what else.';`);
    expect(sql).toContain(`COMMENT ON COLUMN "car"."club_id" IS 'Club it belongs to.';`);
    expect(sql).toContain('CREATE POLICY club_isolation ON "car"');
  });

  test("a later one holds only the difference, leaves what was added by hand, and none is written for none", async () => {
    writeModels("");
    const first = await authorMigration({ name: "first", prismaFolder, now: at(1) });
    writeFileSync(
      first ?? "",
      `${readFileSync(first ?? "", "utf8")}\nCREATE INDEX by_hand ON car (lower(id::text));\n`,
    );
    expect(await authorMigration({ name: "nothing", prismaFolder, now: at(2) })).toBeUndefined();
    writeModels("  /// In millimetres.\n  track Int?");
    const second = await authorMigration({ name: "add_track", prismaFolder, now: at(3) });
    expect(readFileSync(second ?? "", "utf8")).toBe(
      '-- AlterTable\nALTER TABLE "car" ADD COLUMN     "track" INTEGER;\n\n' +
        `COMMENT ON COLUMN "car"."track" IS 'In millimetres.';\n`,
    );
  });

  test("one whose SQL does not run is not kept", async () => {
    writeModels('  /// A default.\n  odd Int @default(dbgenerated("nosuchfunction()"))');
    await expect(authorMigration({ name: "odd", prismaFolder, now: at(1) })).rejects.toThrow(
      /nosuchfunction/,
    );
    expect(readdirSync(join(prismaFolder, "migrations"))).toEqual([]);
  });

  test("a name that is none is quoted and refused", async () => {
    writeModels("");
    await expect(authorMigration({ name: "Add Track", prismaFolder, now: at(1) })).rejects.toThrow(
      /"Add Track" is no name/,
    );
  });
});
