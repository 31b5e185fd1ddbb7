import { createHash, randomUUID } from "node:crypto";
import { createWriteStream } from "node:fs";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { Database } from "@trunnion/db";
import { openThrowawayDatabase, type ThrowawayDatabase } from "@trunnion/db/admin";
import { openClub } from "@trunnion/db/gate";
import { type Fingerprint, fingerprintOf, openWorld, type World } from "@trunnion/fixtures";
import { Refusal, sayRefusal } from "@trunnion/register";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type FileToPack, fromText, openArchiveFile, packFiles, wholeText } from "../archive-file";
import { openOperator } from "../gate";
import { writeJournal } from "../journal";
import { type EvidenceFiles, prepareArchive, restoreArchive } from "./index";

let world: World;
let there: ThrowawayDatabase;
let owner: Database;
let folder: string;
let good: string;
let empty: Fingerprint;
const kept: string[] = [];

const content = Buffer.from("abc");
const sha256Of = (text: string | Buffer) => createHash("sha256").update(text).digest("hex");
const evidence: EvidenceFiles = {
  has: async () => true,
  open: async () => Readable.from([content]),
  keep: async (_, sha256, given) => {
    for await (const _chunk of given);
    kept.push(sha256);
  },
};

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "trunnion-refuse-"));
  world = await openWorld();
  await world.car({ chassis: "M1-001", options: ["H"], keeper: { name: "Tõnu Bråtvær" } });
  await world.car({ chassis: "M1-002" });
  await world.inClub((db) =>
    db.evidence.create({
      data: { sha256: sha256Of(content), mediaType: "image/jpeg", bytes: 3, fileName: "a.jpg" },
    }),
  );
  good = join(folder, "good.zip");
  await openOperator(world.database, "ours", async (ctx) => {
    for (const chassis of ["M1-001", "M1-002"]) {
      await writeJournal(ctx, [{ action: "car.add", noun: "car", nounId: randomUUID(), after: { chassis } }]);
    }
  });
  const prepared = await openOperator(world.database, "ours", (ctx) =>
    prepareArchive(ctx, { database: world.database, personalData: true, evidence }),
  );
  await prepared.pour(createWriteStream(good));
  await prepared.discard();
  there = await openThrowawayDatabase();
  owner = new Database(there.ownerUrl);
  empty = await fingerprintOf(there.ownerUrl);
}, 240_000);
afterAll(async () => {
  await owner?.close();
  await there?.close();
  await world?.close();
  await rm(folder, { recursive: true, force: true });
});

/** Tries to read an archive back, and gives what a person is told; everything must be as it was before. */
async function told(path: string, dryRun = false): Promise<string> {
  kept.length = 0;
  const input = { path, owner, database: there.database, evidence, dryRun };
  const error: unknown = await restoreArchive(input).then(
    () => new Error("it was read back"),
    (thrown) => thrown,
  );
  expect(await fingerprintOf(there.ownerUrl)).toEqual(empty);
  if (!(error instanceof Refusal)) throw error;
  return `${error.code}: ${sayRefusal(error).what}`;
}

type Files = Map<string, string>;

async function filesOf(path: string): Promise<Files> {
  const archive = await openArchiveFile(path);
  const files: Files = new Map();
  for (const name of archive.members.keys()) files.set(name, await wholeText(archive, name));
  archive.close();
  return files;
}

async function packed(files: Iterable<FileToPack>): Promise<string> {
  const path = join(folder, `${randomUUID()}.zip`);
  await packFiles(files, createWriteStream(path));
  return path;
}

/** The good archive with something changed in it; its manifest made to fit again, or left as it was. */
async function changed(change: (files: Files) => void, { forged = true } = {}): Promise<string> {
  const files = await filesOf(good);
  change(files);
  if (forged) {
    const manifest = JSON.parse(files.get("manifest.json") ?? "");
    for (const member of manifest.members) {
      const text = files.get(member.path);
      if (text === undefined) continue;
      member.sha256 = sha256Of(text);
      member.bytes = Buffer.byteLength(text);
      if (member.rows !== undefined) member.rows = text.split("\n").length - 1;
    }
    files.set("manifest.json", JSON.stringify(manifest));
  }
  return packed([...files].map(([name, text]) => fromText(name, text)));
}

/** Changes a file of rows line by line. */
const lines = (path: string, change: (line: string, index: number) => string) => (files: Files) => {
  const text = files.get(path) ?? "";
  files.set(
    path,
    text
      .split("\n")
      .map((line, index) => (line === "" ? line : change(line, index)))
      .join("\n"),
  );
};

/** A row with some fields changed. */
const row = (more: object) => (line: string) => JSON.stringify({ ...JSON.parse(line), ...more });

/** The good archive with every appearance of a name replaced by one as long. */
async function renamed(from: string, to: string): Promise<string> {
  expect(to).toHaveLength(from.length);
  const bytes = await readFile(good, "latin1");
  const path = join(folder, `${randomUUID()}.zip`);
  await writeFile(path, bytes.replaceAll(from, to), "latin1");
  return path;
}

describe("names in an archive", () => {
  test.each([
    ["a path that climbs out", "README.txt", "../etc.txt", "climbs out"],
    ["one that climbs out on the way", "rows/car.jsonl", "rows/../c.json", "climbs out"],
    ["an absolute path", "README.txt", "/etc/a.txt", "absolute"],
    ["a drive's path", "README.txt", "C:/a/b.txt", "absolute"],
    ["backslashes", "README.txt", "..\\..\\a.tx", "backslashes"],
    ["a control character", "README.txt", "READ\nE.txt", "characters"],
  ])("that are %s are refused before anything is unpacked", async (_, from, to, said) => {
    const text = await told(await renamed(from, to));
    expect(text).toMatch(/^ARCHIVE_NAME/);
    expect(text).toContain(said);
  });

  test("that stand twice are refused", async () => {
    const files = [...(await filesOf(good))].map(([name, text]) => fromText(name, text));
    const path = await packed([...files, fromText("rows/car.jsonl", "")]);
    expect(await told(path)).toContain('"rows/car.jsonl": two files of one name');
  });
});

describe("an archive that is not whole", () => {
  test.each([0, 1, 100, -30, -2_000])("cut off at byte %i is refused", async (at) => {
    const bytes = await readFile(good);
    const path = join(folder, `${randomUUID()}.zip`);
    await writeFile(path, bytes.subarray(0, at < 0 ? bytes.length + at : at));
    expect(await told(path)).toMatch(/^ARCHIVE_UNREADABLE: .*cannot be read as an archive/);
  });

  test("with bytes that flipped is refused, naming the file they are in", async () => {
    const bytes = await readFile(good);
    const at = bytes.indexOf("rows/car.jsonl") + 40;
    bytes[at] = (bytes[at] ?? 0) ^ 0xff;
    const path = join(folder, `${randomUUID()}.zip`);
    await writeFile(path, bytes);
    expect(await told(path)).toMatch(/^ARCHIVE_(UNREADABLE|HASH|LINE)/);
  });

  test("that is no ZIP file is refused", async () => {
    const path = join(folder, "text.zip");
    await writeFile(path, "chassis;series\n".repeat(100));
    expect(await told(path)).toMatch(/^ARCHIVE_UNREADABLE/);
  });

  test("that is not there is refused", async () => {
    expect(await told(join(folder, "none.zip"))).toMatch(/^FILE_NOT_FOUND/);
  });

  test("lacking a file that its manifest names is refused", async () => {
    const path = await changed((files) => void files.delete("rows/reading.jsonl"), { forged: false });
    expect(await told(path)).toContain("Missing: rows/reading.jsonl");
  });

  test("lacking a file of rows that its manifest does not name either is refused", async () => {
    const path = await changed((files) => {
      files.delete("rows/reading.jsonl");
      const manifest = JSON.parse(files.get("manifest.json") ?? "");
      manifest.members = manifest.members.filter(
        (one: { path: string }) => one.path !== "rows/reading.jsonl",
      );
      files.set("manifest.json", JSON.stringify(manifest));
    });
    expect(await told(path)).toContain("Missing: rows/reading.jsonl");
  });

  test("with a file more is refused", async () => {
    const path = await changed((files) => void files.set("rows/more.jsonl", "{}\n"), { forged: false });
    expect(await told(path)).toContain("Not named there: rows/more.jsonl");
  });

  test("without a manifest is refused", async () => {
    const path = await changed((files) => void files.delete("manifest.json"), { forged: false });
    expect(await told(path)).toContain("a ZIP file without manifest.json");
  });

  test("with a wrong hash is refused, naming the file", async () => {
    const path = await changed(lines("rows/car.jsonl", row({ remarks: "forged" })), { forged: false });
    expect(await told(path)).toMatch(/^ARCHIVE_HASH: .*rows\/car\.jsonl was changed/);
  });

  test("with evidence that is not what its name says is refused, and nothing of it is kept", async () => {
    const path = await changed((files) => void files.set(`evidence/${sha256Of(content)}.jpg`, "abd"));
    expect(await told(path)).toMatch(/^ARCHIVE_HASH/);
    expect(kept).toEqual([]);
  });
});

describe("a manifest", () => {
  const manifest = (more: object) => (files: Files) => {
    files.set("manifest.json", JSON.stringify({ ...JSON.parse(files.get("manifest.json") ?? ""), ...more }));
  };

  test.each([
    ["of a later version", { formatVersion: 2 }, "trunnion-club-archive of version 2"],
    ["of another format", { format: "photo album" }, '"photo album"'],
    ["without a club", { club: undefined }, "club: "],
    ["with a word too many", { more: 1 }, "more"],
  ])("%s is refused", async (_, more, said) => {
    const text = await told(await changed(manifest(more)));
    expect(text).toMatch(/^ARCHIVE_FORMAT/);
    expect(text).toContain(said);
  });

  test("that is not JSON is refused", async () => {
    const path = await changed((files) => void files.set("manifest.json", "{"), { forged: false });
    expect(await told(path)).toContain("manifest.json is not JSON");
  });
});

describe("an archive made to fill a disk", () => {
  test("unpacks to far more than it is: refused before it is unpacked", async () => {
    const files = await filesOf(good);
    const all = [...files].map(([name, text]) => fromText(name, text));
    const zeros = { path: "rows/zeros.jsonl", open: () => Readable.from([Buffer.alloc(30e6)]) };
    expect(await told(await packed([...all, zeros]))).toMatch(
      /^ARCHIVE_LIMIT: .*rows\/zeros\.jsonl unpacks to \d+ times/,
    );
  });

  test("says it is smaller than it is: refused when it turns out", async () => {
    const bytes = await readFile(good);
    const at = bytes.lastIndexOf("rows/car.jsonl") - 46;
    expect(bytes.readUInt32LE(at)).toBe(0x02014b50);
    bytes.writeUInt32LE(10, at + 24);
    const path = join(folder, `${randomUUID()}.zip`);
    await writeFile(path, bytes);
    expect(await told(path)).toMatch(/^ARCHIVE_UNREADABLE/);
  });

  test("has a line without end: refused", async () => {
    const noise = createHash("sha512");
    let line = "";
    for (let index = 0; line.length < 17e6; index++) line += noise.copy().update(String(index)).digest("hex");
    const path = await changed((files) => void files.set("rows/car.jsonl", line));
    expect(await told(path)).toMatch(/^ARCHIVE_LIMIT: .*rows\/car\.jsonl has a line of more than/);
  });
});

const nowhere = "01900000-0000-7000-8000-00000000dead";

describe("a line of an archive", () => {
  test.each([
    [
      "is not JSON",
      lines("rows/car.jsonl", (line, index) => (index === 1 ? line.slice(0, -1) : line)),
      "rows/car.jsonl, line 2: it is not JSON",
    ],
    [
      "is empty",
      (files: Files) => void files.set("rows/car.jsonl", `\n${files.get("rows/car.jsonl")}`),
      "rows/car.jsonl, line 1: it is not JSON",
    ],
    [
      "has no end",
      (files: Files) => void files.set("rows/car.jsonl", (files.get("rows/car.jsonl") ?? "").slice(0, -1)),
      "rows/car.jsonl, line 2: its end is missing",
    ],
    [
      "breaks the schema",
      lines("rows/car.jsonl", row({ claim: "first" })),
      "rows/car.jsonl, line 1: claim: Invalid input: expected number, received string",
    ],
    ["has a field too many", lines("rows/car.jsonl", row({ wings: 2 })), 'line 1: Unrecognized key: "wings"'],
    [
      "names a code that is none",
      lines("rows/source.jsonl", row({ kind: "rumour" })),
      "rows/source.jsonl, line 1: kind: ",
    ],
    [
      "refers to nothing",
      lines("rows/car-option.jsonl", row({ carId: nowhere })),
      "rows/car-option.jsonl, line 1: it refers to a row that is not in the archive",
    ],
    [
      "refers within its kind to nothing",
      lines("rows/car.jsonl", (line, index) => (index === 1 ? row({ mergedIntoId: nowhere })(line) : line)),
      "rows/car.jsonl, line 2: it refers to a row that is not in the archive",
    ],
    [
      "stands twice",
      (files: Files) =>
        void files.set("rows/car.jsonl", `${files.get("rows/car.jsonl")}${files.get("rows/car.jsonl")}`),
      "rows/car.jsonl, line 3: it stands there twice",
    ],
    [
      "contradicts itself",
      lines("rows/car.jsonl", (line, index) => (index === 1 ? row({ claim: 0 })(line) : line)),
      "rows/car.jsonl, line 2: its fields contradict each other",
    ],
    [
      "has a number too large",
      lines("rows/car.jsonl", row({ serial: 1e12 })),
      "rows/car.jsonl, line 1: a number is larger",
    ],
    [
      "has half a character",
      lines("rows/car.jsonl", row({ remarks: "\ud800" })),
      "rows/car.jsonl, line 1: a ",
    ],
    [
      "is of another club",
      lines("rows/club.jsonl", row({ id: nowhere })),
      "rows/club.jsonl, line 1: the archive is of one club",
    ],
    [
      "was changed in the journal",
      lines("rows/journal-entry.jsonl", (line, index) =>
        index === 1 ? row({ action: "car.forged" })(line) : line,
      ),
      "rows/journal-entry.jsonl, line 2: the journal's chain does not hold",
    ],
  ])("that %s is refused, naming file and line", async (_, change, said) => {
    const text = await told(await changed(change));
    expect(text).toMatch(/^ARCHIVE_LINE/);
    expect(text).toContain(said);
  });

  test("taken out of the journal is missed", async () => {
    const path = await changed((files) => {
      const [, ...rest] = (files.get("rows/journal-entry.jsonl") ?? "").split("\n");
      files.set("rows/journal-entry.jsonl", rest.join("\n"));
    });
    expect(await told(path)).toContain("rows/journal-entry.jsonl, line 1: the journal's chain does not hold");
  });

  test("that is no text is refused, naming its line", async () => {
    const files = await filesOf(good);
    const broken = Buffer.concat([
      Buffer.from(files.get("rows/car.jsonl") ?? ""),
      Buffer.from([0x22, 0xff, 0x0a]),
    ]);
    const manifest = JSON.parse(files.get("manifest.json") ?? "");
    for (const member of manifest.members)
      if (member.path === "rows/car.jsonl") member.sha256 = sha256Of(broken);
    files.set("manifest.json", JSON.stringify(manifest));
    files.delete("rows/car.jsonl");
    const others = [...files].map(([name, text]) => fromText(name, text));
    const path = await packed([...others, { path: "rows/car.jsonl", open: () => Readable.from([broken]) }]);
    expect(await told(path)).toContain("rows/car.jsonl, line 3: it is not text in UTF-8");
  });

  test("more than the manifest says is refused", async () => {
    const path = await changed(
      (files) => {
        const manifest = JSON.parse(files.get("manifest.json") ?? "");
        for (const member of manifest.members) if (member.path === "rows/car.jsonl") member.rows = 7;
        files.set("manifest.json", JSON.stringify(manifest));
      },
      { forged: false },
    );
    expect(await told(path)).toContain("the manifest says there are 7 lines");
  });
});

describe("an archive that is sound", () => {
  test("tried only, is read and proved whole, and nothing is kept", async () => {
    const input = { path: good, owner, database: there.database, evidence, dryRun: true };
    kept.length = 0;
    expect(await restoreArchive(input)).toMatchObject({
      dryRun: true,
      rows: { car: 2, journalEntry: 2 },
      evidenceFiles: 1,
    });
    expect(kept).toEqual([]);
    expect(await fingerprintOf(there.ownerUrl)).toEqual(empty);
  });

  test.each(["", "UP", "a b", "-a", "x".repeat(61)])(
    'is not read in under the short name "%s"',
    async (as) => {
      const input = { path: good, owner, database: there.database, evidence, dryRun: false, as };
      await expect(restoreArchive(input)).rejects.toMatchObject({ code: "ARCHIVE_SLUG" });
    },
  );

  test("is not read into a database that has the club, or another of that short name", async () => {
    const before = await world.fingerprint();
    const mine = new Database(world.ownerUrl);
    const input = { path: good, owner: mine, database: world.database, evidence, dryRun: false };
    await expect(restoreArchive(input)).rejects.toMatchObject({
      code: "ARCHIVE_CLUB_KNOWN",
      details: { slug: "ours" },
    });
    await expect(restoreArchive({ ...input, as: "another" })).rejects.toMatchObject({
      code: "ARCHIVE_CLUB_KNOWN",
    });
    await mine.close();
    expect(await world.fingerprint()).toEqual(before);
  });

  test("cannot be forged by the service's role: an entry that brings time and hash is given its own", async () => {
    const forged = { action: "car.add", noun: "car", nounId: nowhere, at: new Date(0), hash: "f".repeat(64) };
    await openOperator(world.database, "ours", async ({ db }) => {
      await db.journalEntry.create({ data: { ...forged, sequence: 99n } });
      const [last] = await db.journalEntry.findMany({ orderBy: { sequence: "desc" }, take: 1 });
      expect(last?.sequence).toBe(3n);
      expect(last?.at.getFullYear()).toBeGreaterThan(2000);
      expect(last?.hash).not.toBe(forged.hash);
    });
  });

  test("cannot be read in by the service's own role", async () => {
    const input = { path: good, owner: there.database, database: there.database, evidence, dryRun: false };
    await expect(restoreArchive(input)).rejects.toThrow();
    expect(await fingerprintOf(there.ownerUrl)).toEqual(empty);
  });

  test("goes in whole; somebody of that address here is that member", async () => {
    const path = await changed((files) => {
      const member = {
        email: "known@example.test",
        id: randomUUID(),
        joinedAt: "2020-01-01T00:00:00.000Z",
        leftAt: null,
      };
      files.set(
        "rows/member.jsonl",
        `${JSON.stringify({ ...member, name: "Åse", personId: nowhere, roles: ["owner"] })}\n`,
      );
      lines("rows/evidence.jsonl", row({ addedById: nowhere }))(files);
    });
    const [known] = await world.asOwner(
      (db) => db.$queryRaw<{ id: string }[]>`SELECT gen_random_uuid()::text AS id`,
    );
    await openClub(owner, nowhere, (db) =>
      db.$executeRawUnsafe(
        "INSERT INTO person (id, name, email) VALUES ($1::uuid, 'Here', 'known@example.test')",
        known?.id,
      ),
    );
    const input = { path, owner, database: there.database, evidence, dryRun: false };
    expect(await restoreArchive(input)).toMatchObject({ people: { made: 0, known: 1 } });
    const found = await openOperator(there.database, "ours", async ({ db }) => ({
      member: await db.membership.findFirstOrThrow(),
      evidence: await db.evidence.findFirstOrThrow(),
    }));
    expect(found.member.personId).toBe(known?.id);
    expect(found.evidence.addedById).toBe(known?.id);
  });
});
