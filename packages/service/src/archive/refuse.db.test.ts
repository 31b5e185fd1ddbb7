import { createHash, randomUUID } from "node:crypto";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { Readable } from "node:stream";
import { describe, expect, test } from "vitest";
import { fromText } from "../archive-file";
import {
  changed,
  content,
  type Files,
  filesOf,
  folder,
  good,
  kept,
  lines,
  nowhere,
  packed,
  renamed,
  row,
  sha256Of,
  shareArchive,
  told,
} from "./tried-archive.fixture";

shareArchive();

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
