import { randomUUID } from "node:crypto";
import { createWriteStream } from "node:fs";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { Database, insertRows } from "@trunnion/db";
import { openThrowawayDatabase, type ThrowawayDatabase } from "@trunnion/db/admin";
import { openClub } from "@trunnion/db/gate";
import { fingerprintOf, openWorld, type World } from "@trunnion/fixtures";
import { archiveKinds, type Field, type Kind, notArchived } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openArchiveFile, wholeText } from "../archive-file";
import { columnTypes, tableOf, unmatched } from "../archive-row";
import { bookOf } from "../characteristic";
import { compareCurrentValues } from "../current-value";
import { openMember, openOperator } from "../gate";
import { verifyJournal, writeJournal } from "../journal";
import { type EvidenceFiles, prepareArchive, restoreArchive } from "./index";

let world: World;
let folder: string;
const others: ThrowawayDatabase[] = [];

/** Evidence in memory, standing in for a folder: what matters here is that content goes and comes by its hash. */
function evidenceIn(kept: Map<string, Buffer>): EvidenceFiles {
  return {
    has: async (_, sha256) => kept.has(sha256),
    open: async (_, sha256) => {
      const content = kept.get(sha256);
      return content && Readable.from([content]);
    },
    keep: async (_, sha256, content) => {
      const chunks: Buffer[] = [];
      for await (const chunk of content) chunks.push(chunk);
      kept.set(sha256, Buffer.concat(chunks));
    },
  };
}

// SHA-256 of "abc" and of nothing: FIPS 180-4's own example, and the well-known one.
const ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
const NOTHING = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";
const source = new Map([[ABC, Buffer.from("abc")]]);

/** What a field holds where anything at all would not do. */
const particular: Readonly<Record<string, readonly [full: unknown, bare: unknown]>> = {
  valueKind: ["quantity", "absent"],
  afterValueKind: ["quantity", "absent"],
  beforeValueKind: ["quantity", null],
  nominalValueKind: ["quantity", null],
  characteristic: ["front.antiRollBar.diameter", "rear.antiRollBar.diameter"],
  side: ["whole", "whole"],
  criterion: [{ kind: "seen" }, { kind: "seen" }],
  condition: [{ op: "always" }, { op: "always" }],
  eligibility: [{ op: "always" }, { op: "always" }],
  "characteristic.key": ["hood.straps", "hood.frame"],
  "characteristic.label": ["hood straps", "hood frame"],
  "characteristic.kind": ["text", "text"],
  "characteristic.assembly": ["body", "body"],
  "characteristic.definition": [{ maximumLength: 100 }, { maximumLength: 5 }],
  "numberDecision.outcome": ["oneHolds", "undecided"],
  replaces: [["01900000-0000-7000-8000-00000000abcd"], []],
  "evidence.sha256": [ABC, NOTHING],
  "evidence.mediaType": ["image/jpeg", "application/pdf"],
  // Sent or given up, never both.
  "notice.sentAt": ["2026-11-25T16:45:59.007Z", null],
  "notice.givenUpAt": [null, "2026-11-25T16:45:59.007Z"],
  // A feature is one of the dictionary's or has a spot of its own.
  "partFeature.characteristic": ["front.disc.face", null],
  "partFeature.spot": [null, "bolt to upright"],
  "partFeature.kind": ["characteristic", "thread"],
  "specification.status": ["superseded", "draft"],
  "importRun.sha256": [ABC, NOTHING],
  "printedSheet.code": ["0123ABCD", "456789EF"],
  "printedSheet.model": [
    { layoutVersion: 1, entry: { driver: "Tõnu Bråtvær", runningNumber: "7" }, 10: 1, 9: 2 },
    { entry: { driver: "" } },
  ],
};

const NAMES = "personal: Tõnu Bråtvær";

function filling(kind: Kind, name: string, field: Field, index: number): unknown {
  const given = particular[`${kind.name}.${name}`] ?? particular[name];
  if (given) return given[index];
  if (index === 1 && field.optional) return null;
  if (field.personal === "emptied") return field.type === "json" ? [{ found: NAMES }] : `${NAMES} ${name}`;
  switch (field.type) {
    case "id":
      return randomUUID();
    case "text":
      return `${name} ${index}: “ü”, "quoted" \\ \u2028 \u0001 & 日本\n`;
    case "texts":
      return index === 0 ? ["b", "a", ""] : [];
    case "integer":
      return index + 1;
    case "number":
      return index === 0 ? 1.5e-7 : -0.1;
    case "yesNo":
      return index === 0;
    case "day":
      return index === 0 ? "1971-02-28" : "0999-12-31";
    case "instant":
      return index === 0 ? "2026-11-25T16:45:59.007Z" : "1970-01-01T00:00:00.000Z";
    case "json":
      return { b: [1e21, 0.1, null, true], a: { 10: "x", 9: "é" } };
    default:
      return (field.schema.toJSONSchema() as { enum?: unknown[] }).enum?.[index] ?? [];
  }
}

type Ids = Map<string, string[]>;

/** Rows of a kind, the first with every field filled, the second with every one empty that may be. */
function rowsFor(kind: Kind, ids: Ids): Record<string, unknown>[] {
  return [0, 1].map((index) => {
    const row: Record<string, unknown> = {};
    for (const [name, field] of kind.fields) {
      row[name] = filling(kind, name, field, index);
      if (field.refersTo === undefined || row[name] === null) continue;
      row[name] = field.refersTo === kind.name ? null : (ids.get(field.refersTo)?.[index] ?? null);
    }
    return row;
  });
}

/** Evidence supports exactly one thing by one link: a link to each of what there is. */
function linksFor(kind: Kind, ids: Ids): Record<string, unknown>[] {
  const targets = [...kind.fields].filter(([name, { refersTo }]) => refersTo && name !== "evidenceId");
  const [full] = rowsFor(kind, ids);
  return targets.map(([name, { refersTo = "" }]) => ({
    ...full,
    ...Object.fromEntries(targets.map(([other]) => [other, null])),
    id: randomUUID(),
    [name]: ids.get(refersTo)?.[0],
  }));
}

const written = new Set(["club", "member", "journalEntry"]);

/** Two rows at least in every table that an archive has, all fields filled and all empty, in our club. */
async function fillEverything(): Promise<void> {
  const ids: Ids = new Map();
  await world.person({ name: "Tõnu Bråtvær", email: "tonu@example.test", roles: ["registrar", "owner"] });
  const left = await world.person({ name: "Åse Ørnhøi", email: "ase@example.test", roles: ["owner"] });
  await world.inClub(async (db) => {
    await db.membership.updateMany({ where: { id: left.membershipId }, data: { leftAt: new Date(0) } });
    const members = await db.membership.findMany({ orderBy: { roles: "desc" } });
    ids.set(
      "member",
      members.map(({ id }) => id),
    );
    for (const kind of archiveKinds) {
      if (written.has(kind.name)) continue;
      let rows = kind.name === "evidenceLink" ? linksFor(kind, ids) : rowsFor(kind, ids);
      if (kind.name === "publicExtract") rows = rows.slice(0, 1);
      await insertRows(db, tableOf(kind), rows);
      ids.set(
        kind.name,
        rows.map(({ id }) => String(id)),
      );
      for (const [name, { refersTo }] of kind.fields) {
        if (refersTo !== kind.name) continue;
        const column = name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
        // The earlier row by id points to the later one, which an archive read in order has not read yet.
        const [first, second] = rows.map(({ id }) => String(id)).sort();
        await db.$executeRawUnsafe(
          `UPDATE "${tableOf(kind)}" SET "${column}" = $2::uuid WHERE id = $1::uuid`,
          first,
          second,
        );
      }
    }
  });
  await openOperator(world.database, "ours", async (ctx) => {
    const [carId = ""] = ids.get("car") ?? [];
    const line = { action: "car.change", noun: "car", nounId: carId, carId, reason: 'a | "b" ü' };
    await writeJournal(ctx, [
      line,
      { ...line, before: { x: [1, 0.1, 1e-7] }, after: { y: "ü\u2028", 10: 1, 9: { z: null } } },
    ]);
  });
}

async function exported(
  from: { readonly database: Database },
  {
    personalData,
    club = "ours",
    files,
  }: { personalData: boolean; club?: string; files: Map<string, Buffer> },
): Promise<string> {
  const path = join(folder, `${randomUUID()}.zip`);
  const input = { database: from.database, personalData, evidence: evidenceIn(files) };
  const prepared = await openOperator(from.database, club, (ctx) => prepareArchive(ctx, input));
  try {
    await prepared.pour(createWriteStream(path));
  } finally {
    await prepared.discard();
  }
  return path;
}

async function restored(path: string, as?: string) {
  const there = await openThrowawayDatabase();
  others.push(there);
  const owner = new Database(there.ownerUrl);
  const files = new Map<string, Buffer>();
  try {
    const input = { path, owner, database: there.database, evidence: evidenceIn(files), dryRun: false };
    const report = await restoreArchive({ ...input, ...(as === undefined ? {} : { as }) });
    return { there, report, files };
  } finally {
    await owner.close();
  }
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "trunnion-round-trip-"));
  world = await openWorld();
  await fillEverything();
}, 240_000);
afterAll(async () => {
  for (const other of others) await other.close();
  await world?.close();
  await rm(folder, { recursive: true, force: true });
});

describe("what an archive holds", () => {
  test("is every table of the schema, but for those that are listed with a reason", async () => {
    const tables = await world.asOwner(
      (db) => db.$queryRaw<{ name: string }[]>`
        SELECT tablename::text AS name FROM pg_tables WHERE schemaname = 'public' ORDER BY 1`,
    );
    const known = new Set([...archiveKinds.map(tableOf), ...Object.keys(notArchived)]);
    expect(tables.map(({ name }) => name).filter((name) => !known.has(name))).toEqual([]);
    expect(tables.length).toBe(known.size);
  });

  test("is every column of them, and every code the database knows", async () => {
    const types = await world.asOwner(columnTypes);
    expect(archiveKinds.flatMap((kind) => unmatched(kind, types.get(tableOf(kind))))).toEqual([]);
    const labels = await world.asOwner(
      (db) => db.$queryRaw<{ name: string; label: string }[]>`
        SELECT t.typname::text AS name, e.enumlabel::text AS label FROM pg_enum e JOIN pg_type t ON t.oid = e.enumtypid`,
    );
    const unreadable = archiveKinds.flatMap((kind) =>
      [...kind.fields].flatMap(([name, { schema, type }]) => {
        const column = name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
        const of = types
          .get(tableOf(kind))
          ?.get(column)
          ?.replace(/"|\[\]/g, "");
        const codes = labels.filter((one) => one.name === of).map(({ label }) => label);
        const given = codes.map((code) => (type === "choices" ? [code] : code));
        return given
          .filter((code) => !schema.safeParse(code).success)
          .map((code) => `${kind.name}.${name} ${code}`);
      }),
    );
    expect(unreadable).toEqual([]);
  });

  test("has a row of each kind here, so that the round trip proves something", async () => {
    const path = await exported(world, { personalData: true, files: source });
    const archive = await openArchiveFile(path);
    const manifest = JSON.parse(await wholeText(archive, "manifest.json"));
    archive.close();
    const empty = manifest.members.filter(({ rows }: { rows?: number }) => rows === 0);
    expect(empty).toEqual([]);
    expect(manifest).toMatchObject({
      personalData: true,
      missingEvidence: [NOTHING],
      journal: { entries: 2 },
    });
  });
});

describe.each([
  ["with personal data", true],
  ["without personal data", false],
])("an archive %s", (_, personalData) => {
  test("read into an empty database and exported again gives the same bytes", async () => {
    const path = await exported(world, { personalData, files: source });
    const { there, report, files } = await restored(path);
    const again = await exported(there, { personalData, files });
    expect(Buffer.compare(await readFile(path), await readFile(again))).toBe(0);
    expect(report).toMatchObject({
      evidenceFiles: 1,
      missingEvidence: [NOTHING],
      people: { made: 2, known: 0 },
    });
    expect(files.get(ABC)?.toString()).toBe("abc");
  }, 120_000);

  test("exported twice gives the same bytes", async () => {
    const [one, two] = [
      await exported(world, { personalData, files: source }),
      await exported(world, { personalData, files: source }),
    ];
    expect(Buffer.compare(await readFile(one), await readFile(two))).toBe(0);
  });

  test("read back is proven: the journal's chain holds, and goes on; the current values are right", async () => {
    const path = await exported(world, { personalData, files: source });
    const { there } = await restored(path, "another-name");
    await openOperator(there.database, "another-name", async (ctx) => {
      expect(await verifyJournal(ctx)).toEqual([]);
      expect(await compareCurrentValues(ctx, await bookOf(ctx))).toEqual([]);
      await writeJournal(ctx, [{ action: "car.change", noun: "car", nounId: randomUUID() }]);
      expect(await verifyJournal(ctx)).toEqual([]);
      expect(await ctx.db.journalEntry.count()).toBe(3);
    });
  }, 120_000);
});

describe("an archive under another short name", () => {
  test("differs in the club's own line and the manifest, and nowhere else", async () => {
    const path = await exported(world, { personalData: true, files: source });
    const { there, files } = await restored(path, "renamed");
    const again = await exported(there, { personalData: true, club: "renamed", files });
    const membersOf = async (one: string) => {
      const archive = await openArchiveFile(one);
      const { members } = JSON.parse(await wholeText(archive, "manifest.json"));
      archive.close();
      return members as { path: string; sha256: string }[];
    };
    const [before, after] = [await membersOf(path), await membersOf(again)];
    const changed = after
      .filter(({ sha256 }, index) => sha256 !== before[index]?.sha256)
      .map((one) => one.path);
    expect(changed).toEqual(["rows/club.jsonl"]);
  }, 120_000);
});

describe("personal data", () => {
  const textOf = async (path: string) => {
    const archive = await openArchiveFile(path);
    const texts: string[] = [];
    for (const member of archive.members.keys()) texts.push(await wholeText(archive, member));
    archive.close();
    return texts.join("\n");
  };

  test("are in an archive that asks for them", async () => {
    const text = await textOf(await exported(world, { personalData: true, files: source }));
    expect(text).toContain(NAMES);
    expect(text).toContain("tonu@example.test");
  });

  test("are nowhere in one that does not", async () => {
    const text = await textOf(await exported(world, { personalData: false, files: source }));
    for (const said of ["Tõnu", "Bråtvær", "Ørnhøi", "tonu@", "ase@", "personal:"])
      expect(text).not.toContain(said);
  });

  test("left out, leave people in the database who cannot sign in, under an address that names nobody", async () => {
    const { there } = await restored(await exported(world, { personalData: false, files: source }));
    const owner = new Database(there.ownerUrl);
    const rows = await openClub(
      owner,
      world.ours.id,
      (db) => db.$queryRaw<{ name: string; email: string }[]>`SELECT name, email FROM person`,
    );
    await owner.close();
    expect(rows).toHaveLength(2);
    for (const { name, email } of rows) {
      expect(name).toBe("name left out");
      expect(email).toMatch(/^[0-9a-f-]{36}@left-out\.invalid$/);
    }
  }, 120_000);
});

describe("who may", () => {
  test.each(["owner", "scrutineer"] as const)(
    "take the club away: not a member who is only %s",
    async (role) => {
      const member = await world.person({ roles: [role], club: world.theirs });
      const input = { database: world.database, personalData: false, evidence: evidenceIn(source) };
      await expect(
        openMember(world.database, member, "theirs", (ctx) => prepareArchive(ctx, input)),
      ).rejects.toMatchObject({ code: "ROLE_NEEDED" });
    },
  );

  test("gets nothing of another club", async () => {
    const path = await exported(world, { personalData: true, club: "theirs", files: source });
    const archive = await openArchiveFile(path);
    expect(await wholeText(archive, "rows/car.jsonl")).toBe("");
    expect(await wholeText(archive, "rows/club.jsonl")).toContain('"slug":"theirs"');
    archive.close();
  });

  test("writes nothing by exporting", async () => {
    const before = await fingerprintOf(world.ownerUrl);
    await exported(world, { personalData: true, files: source });
    expect(await fingerprintOf(world.ownerUrl)).toEqual(before);
  });
});
