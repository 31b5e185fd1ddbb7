import { describe, expect, test } from "vitest";
import {
  archiveKinds,
  archiveManifest,
  archiveReadme,
  type Kind,
  kindFile,
  manifestJsonSchema,
  rowJsonSchema,
} from "./index";

const kindOf = (name: string): Kind => {
  const found = archiveKinds.find((kind) => kind.name === name);
  if (!found) throw new Error(`no kind ${name}`);
  return found;
};

describe("the kinds of an archive", () => {
  test("stand after those they refer to, so that they can be read back in order", () => {
    const before = new Set<string>();
    const ahead: string[] = [];
    for (const { name, fields } of archiveKinds) {
      for (const [field, { refersTo }] of fields) {
        if (refersTo !== undefined && refersTo !== name && !before.has(refersTo))
          ahead.push(`${name}.${field}`);
      }
      before.add(name);
    }
    expect(ahead).toEqual([]);
  });

  test("have names of their own, and are sorted by what tells their rows apart", () => {
    expect(new Set(archiveKinds.map(({ name }) => name)).size).toBe(archiveKinds.length);
    const sorted = Object.fromEntries(archiveKinds.map(({ name, order }) => [name, order.join()]));
    expect(sorted).toMatchObject({ car: "id", carOption: "carId,code", journalEntry: "sequence" });
  });

  test("name every field's meaning, and every number's unit", () => {
    const silent = archiveKinds.flatMap(({ name, fields }) =>
      [...fields].flatMap(([field, { meaning, type, unit }]) =>
        meaning.length < 3 || (type === "number" && unit === undefined) ? [`${name}.${field}`] : [],
      ),
    );
    expect(silent).toEqual([]);
  });

  test("mark what is personal: keepers, drivers, members, and what a reading-in quoted", () => {
    const marked = archiveKinds.flatMap(({ name, fields }) =>
      [...fields].flatMap(([field, { personal }]) => (personal === undefined ? [] : [`${name}.${field}`])),
    );
    expect(marked).toEqual([
      "member.email",
      "member.name",
      "keeper.address",
      "keeper.email",
      "keeper.name",
      "keeper.phone",
      "partNote.text",
      "notice.problem",
      "entry.driver",
      "printedSheet.model",
      "entryDecision.signature",
      "entryDecision.signedBy",
      "importRun.doubts",
      "importRun.problems",
    ]);
  });
});

const option = { carId: "01900000-0000-7000-8000-000000000001", code: "H" };

describe("a line of an archive", () => {
  test("is read when every field is there", () => {
    expect(kindOf("carOption").row.parse(option)).toEqual(option);
  });

  test.each([
    ["lacks a field", { carId: option.carId }],
    ["has one besides", { ...option, more: 1 }],
    ["has an id that is none", { ...option, carId: "1" }],
    ["has an id in capitals", { ...option, carId: "01900000-0000-7000-8000-00000000000A" }],
    ["has a NUL", { ...option, code: "H\0" }],
    ["is no object", [option]],
  ])("is not when it %s", (_, row) => {
    expect(kindOf("carOption").row.safeParse(row).success).toBe(false);
  });

  test.each(["2026-11-25T16:45:59.123Z"])("takes the instant %s", (at) => {
    expect(kindOf("marque").fields.get("recordedAt")?.schema.safeParse(at).success).toBe(true);
  });

  test.each([
    "2026-11-25",
    "2026-11-25T16:45:59Z",
    "2026-11-25T16:45:59.123+01:00",
    "2026-02-30T00:00:00.000Z",
  ])("takes no instant %s", (at) => {
    expect(kindOf("marque").fields.get("recordedAt")?.schema.safeParse(at).success).toBe(false);
  });
});

describe("the JSON Schema of a kind", () => {
  test.each(archiveKinds.map((kind) => [kind.name, kind] as const))(
    "%s says its dialect, what it is, and every field's meaning, and takes no others",
    (_, kind) => {
      const schema = rowJsonSchema(kind);
      expect(schema).toMatchObject({
        $schema: "https://json-schema.org/draft/2020-12/schema",
        $id: `${kindFile(kind.name)}.schema.json`,
        type: "object",
        additionalProperties: false,
        required: [...kind.fields.keys()],
      });
      const properties = Object.entries(schema.properties as Record<string, { description: string }>);
      expect(properties.map(([name]) => name)).toEqual([...kind.fields.keys()]);
      expect(properties.filter(([, { description }]) => !description)).toEqual([]);
    },
  );

  test("says unit, what is referred to, and what is personal", () => {
    expect(rowJsonSchema(kindOf("modificationFastener")).properties).toMatchObject({
      length: { type: ["number", "null"], unit: "m" },
      modificationId: { type: "string", refersTo: "modification" },
    });
    expect(rowJsonSchema(kindOf("entry")).properties).toMatchObject({ driver: { personalData: true } });
  });

  test("of the manifest names the format", () => {
    expect(manifestJsonSchema().properties).toMatchObject({ format: { const: "trunnion-club-archive" } });
  });
});

describe("a manifest", () => {
  const manifest = {
    format: "trunnion-club-archive",
    formatVersion: 1,
    club: { id: option.carId, slug: "ours", name: "Ours" },
    personalData: false,
    journal: { entries: 0, lastHash: "" },
    missingEvidence: [],
    members: [{ path: "README.txt", bytes: 3, sha256: "a".repeat(64) }],
  };

  test("is read", () => expect(archiveManifest.parse(manifest)).toEqual(manifest));

  test.each([
    ["of a later version", { ...manifest, formatVersion: 2 }],
    ["of a hash that is none", { ...manifest, members: [{ path: "a", bytes: 1, sha256: "A".repeat(64) }] }],
    ["of a negative size", { ...manifest, members: [{ path: "a", bytes: -1, sha256: "a".repeat(64) }] }],
  ])("is not when it is %s", (_, given) => {
    expect(archiveManifest.safeParse(given).success).toBe(false);
  });
});

describe("the README of an archive", () => {
  const text = archiveReadme("Sandvær Register", archiveKinds, false);

  test("names every file of rows and every field in it", () => {
    const lacking = archiveKinds.flatMap(({ name, fields }) =>
      [`rows/${kindFile(name)}.jsonl`, ...[...fields.keys()].map((field) => `    ${field}`)].filter(
        (part) => !text.includes(part),
      ),
    );
    expect(lacking).toEqual([]);
  });

  test("says whether personal data are in it, and that it certifies nothing", () => {
    const flat = (lines: string) => lines.replace(/\s+/g, " ");
    expect(flat(text)).toContain("Personal data were left out");
    expect(flat(archiveReadme("Ours", archiveKinds, true))).toContain("Personal data are in it");
    expect(text).toContain("certifies nothing");
  });

  test("is plain text of lines that fit a screen", () => {
    expect(text.split("\n").filter((line) => line.length > 90)).toEqual([]);
    expect(text.endsWith("\n")).toBe(true);
  });
});
