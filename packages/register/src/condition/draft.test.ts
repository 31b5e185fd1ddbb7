import { parseQuantity } from "@trunnion/calc";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import type { Condition } from "./condition";
import {
  type DraftGroup,
  type DraftPart,
  draftFields,
  draftFrom,
  draftLimits,
  draftNodes,
  editDraft,
  emptyDraft,
  emptyPart,
} from "./draft";
import { readDraft } from "./draft-read";
import { draftOf } from "./draft-write";
import { conditionLimits, conditionSchema } from "./schema";
import { likelyCharacteristics, namedCharacteristics } from "./search";

const reading = { book: builtInBook, system: "metric", today: "2026-11-25" } as const;
const bar = "Rear anti-roll bar diameter";

function asked(...parts: readonly Partial<DraftPart>[]): DraftGroup {
  return { kind: "group", join: "all", of: parts.map((part) => ({ ...emptyPart, ...part })) };
}

const read = (draft: DraftGroup) => {
  const found = readDraft(draft, reading);
  return found.ok ? found.condition : found.problems;
};

describe("a part of the form", () => {
  test.each<[Partial<DraftPart>, Condition]>([
    [
      { characteristic: bar, is: "gt", figure: "5/8 in" },
      { op: "number", characteristic: "rear.antiRollBar.diameter", is: "gt", si: 0.015875 },
    ],
    [
      { characteristic: "rear.antiRollBar.diameter", is: "le", figure: "16" },
      { op: "number", characteristic: "rear.antiRollBar.diameter", is: "le", si: 0.016 },
    ],
    [
      { characteristic: bar, ask: "difference", is: "ge", figure: "-2 mm" },
      {
        op: "against",
        characteristic: "rear.antiRollBar.diameter",
        measure: "difference",
        is: "ge",
        si: -0.002,
      },
    ],
    [
      { characteristic: bar, ask: "ratio", is: "ge", figure: "1,25" },
      { op: "against", characteristic: "rear.antiRollBar.diameter", measure: "ratio", is: "ge", si: 1.25 },
    ],
    [
      { characteristic: bar, ask: "absent" },
      { op: "absent", characteristic: "rear.antiRollBar.diameter" },
    ],
    [
      { characteristic: "front camber", side: "left", ask: "recorded" },
      { op: "recorded", characteristic: "front.camber", side: "left" },
    ],
    [
      { characteristic: "body.colour", figure: " blå " },
      { op: "textHas", characteristic: "body.colour", text: "blå" },
    ],
    [
      { characteristic: "body.style", values: ["coupe", "nothing such"] },
      { op: "code", characteristic: "body.style", in: ["coupe"] },
    ],
    [
      { characteristic: "wheels.stud.thread", figure: "m12 x 1.5; 1/2 UNF" },
      { op: "code", characteristic: "wheels.stud.thread", in: ["M12x1.5", "1/2-20 UNF"] },
    ],
    [
      { characteristic: "safety.harness.expires", is: "lt", figure: "6/2027" },
      { op: "date", characteristic: "safety.harness.expires", is: "lt", date: "2027-06-30" },
    ],
    [
      { characteristic: "safety.harness.expires", is: "lt", figure: "today" },
      { op: "date", characteristic: "safety.harness.expires", is: "lt", date: "eventDay" },
    ],
    [
      { characteristic: "front.camber", ask: "sidesDiffer", figure: "0°30'" },
      { op: "sidesDiffer", characteristic: "front.camber", by: Math.PI / 360 },
    ],
    [
      { characteristic: "front.camber", ask: "readingOlderThan", figure: "365" },
      { op: "readingOlderThan", characteristic: "front.camber", days: 365 },
    ],
    [
      { about: "built", figure: "1971", until: "3/72" },
      { op: "built", from: "1971-01-01", to: "1972-03-31" },
    ],
    [
      { about: "status", statuses: ["inUse"] },
      { op: "status", in: ["inUse"] },
    ],
    [{ about: "everyCar" }, { op: "always" }],
  ])("%o reads as %o", (part, condition) => {
    expect(read(asked(part))).toEqual(condition);
  });

  test.each<[Partial<DraftPart>, string, RegExp]>([
    [{}, "characteristic", /^Choose what to ask about/],
    [
      { characteristic: "anti roll" },
      "characteristic",
      /no characteristic of this club's; for example "Front anti-roll bar/,
    ],
    [{ characteristic: bar }, "figure", /^Give a figure with its unit, in mm/],
    [{ characteristic: bar, figure: "thick" }, "figure", /"thick"/],
    [{ characteristic: bar, figure: "16 psi" }, "figure", /"16 psi"/],
    [{ characteristic: bar, figure: "16 m" }, "figure", /too large to be believed/],
    [{ characteristic: bar, ask: "ratio", figure: "a lot" }, "figure", /is no number; give a multiple/],
    [{ characteristic: bar, ask: "readingOlderThan", figure: "0" }, "figure", /give 1 to 36500/],
    [{ characteristic: "body.style" }, "values[]", /^Tick at least one/],
    [{ characteristic: "safety.harness.expires", figure: "soon" }, "figure", /"soon" is no date/],
    [{ about: "built", figure: "1972", until: "1971" }, "until", /lies before 1972/],
    [{ about: "series" }, "series[]", /^Tick at least one/],
  ])("%o is refused at its field %s", (part, field, message) => {
    const problems = read(asked({ about: "everyCar" }, part));
    expect(problems).toMatchObject([{ field: `of.1.${field}`, message: expect.stringMatching(message) }]);
  });

  test("of an empty group is refused where the group stands, and every problem is told at once", () => {
    const draft: DraftGroup = {
      kind: "group",
      join: "any",
      of: [{ kind: "group", join: "none", of: [] }, emptyPart],
    };
    expect(read(draft)).toMatchObject([{ field: "of.0.join" }, { field: "of.1.characteristic" }]);
  });
});

describe("a draft", () => {
  test("is made of whatever a form sends, within its limits, without refusing", () => {
    const deep = Array.from({ length: draftLimits.depth + 5 }).reduce<unknown>(
      (of) => ({ kind: "group", join: "any", of: [of] }),
      "x",
    );
    expect(draftNodes(draftFrom(deep))).toHaveLength(draftLimits.depth);
    const wide = draftFrom({
      of: Array.from({ length: 99 }, () => ({ kind: "part", figure: 3, values: "x" })),
    });
    expect(wide.of).toHaveLength(draftLimits.parts);
    expect(wide.of[0]).toEqual(emptyPart);
    expect(draftFrom(null)).toEqual({ kind: "group", join: "all", of: [] });
  });

  test("gains and loses parts by its buttons, and never beyond its depth", () => {
    const one = editDraft(emptyDraft, { do: "addGroup", at: "" });
    const two = editDraft(one, { do: "addPart", at: "of.1" });
    expect(two.of[1]).toMatchObject({ kind: "group", join: "any", of: [emptyPart, emptyPart] });
    expect(editDraft(two, { do: "remove", at: "of.0" }).of).toHaveLength(1);
    expect(editDraft(two, { do: "remove", at: "of.7" })).toEqual(two);
    const places = Array.from({ length: draftLimits.depth + 2 }, (_, level) =>
      Array.from({ length: level }, () => "of.1").join("."),
    );
    const deepest = places.reduce((draft, at) => editDraft(draft, { do: "addGroup", at }), emptyDraft);
    expect(draftNodes(deepest).filter(({ kind }) => kind === "group")).toHaveLength(draftLimits.depth);
    const picked = editDraft(two, { do: "pick", at: "of.1.of.0", characteristic: bar });
    expect(picked.of[1]).toMatchObject({ of: [{ characteristic: bar }, { characteristic: "" }] });
  });

  test("names its fields as it reads them", () => {
    const draft = asked({ values: ["a", "b"] });
    expect(draftFields(draft)).toMatchObject({
      join: ["all"],
      "of.0.kind": ["part"],
      "of.0.values[]": ["a", "b"],
    });
  });
});

const leaf = fc.oneof(
  fc.constantFrom<Condition>(
    { op: "always" },
    { op: "series", in: ["series-2"] },
    { op: "built", from: "1971-01-01", to: "1972-02-29" },
    { op: "absent", characteristic: "rear.antiRollBar.diameter" },
    { op: "recorded", characteristic: "front.camber", side: "right" },
    { op: "code", characteristic: "body.style", in: ["coupe"] },
    { op: "code", characteristic: "wheels.stud.thread", in: ["M12x1.5"] },
    { op: "textHas", characteristic: "body.colour", text: "blå" },
    { op: "date", characteristic: "safety.harness.expires", is: "le", date: "eventDay" },
    { op: "verdict", characteristic: "front.camber", in: ["outsideLimits", "cannotTell"] },
    { op: "against", characteristic: "front.camber", measure: "ratio", is: "ge", si: 1.2 },
    { op: "sidesDiffer", characteristic: "front.camber" },
    { op: "readingOlderThan", characteristic: "front.toe", days: 30 },
  ),
  fc.integer({ min: 100, max: 400 }).map((tenths) => ({
    op: "number" as const,
    characteristic: "rear.antiRollBar.diameter",
    is: "gt" as const,
    si: parseQuantity(`${tenths / 10} mm`, "length").si,
  })),
  fc.integer({ min: -64, max: 64 }).map((parts) => ({
    op: "against" as const,
    characteristic: "rear.antiRollBar.diameter",
    measure: "difference" as const,
    is: "lt" as const,
    si: parseQuantity(`${parts}/64 in`, "length").si,
  })),
);
const condition = fc.letrec<{ readonly node: Condition }>((tie) => {
  const of = fc.array(tie("node"), { minLength: 2, maxLength: 3 });
  return {
    node: fc.oneof(
      { maxDepth: 3 },
      leaf,
      of.map((parts) => ({ op: "all" as const, of: parts })),
      of.map((parts) => ({ op: "any" as const, of: parts })),
      tie("node").map((one) => ({ op: "not" as const, of: one })),
    ),
  };
}).node;

describe("a condition in the form", () => {
  test("is shown part by part as deep as conditions go", () => {
    const always: Condition = { op: "always" };
    const nested = (levels: number): Condition =>
      levels === 1 ? always : { op: levels % 2 === 0 ? "all" : "any", of: [nested(levels - 1), always] };
    const deepest = nested(conditionLimits.depth);
    expect(conditionSchema.safeParse(deepest).success).toBe(true);
    const draft = draftOf(deepest, reading);
    expect(draft && read(draft)).toEqual(deepest);
  });

  test("of groups that come to more levels than a condition has is refused in words", () => {
    const none = Array.from({ length: draftLimits.depth }).reduce<DraftGroup>(
      (inner) => ({ kind: "group", join: "none", of: [inner, { ...emptyPart, about: "everyCar" }] }),
      asked({ about: "everyCar" }),
    );
    expect(read(none)).toMatchObject([{ field: "join", message: expect.stringContaining("12 levels") }]);
  });

  test("is the same condition when it is read again, to the last bit of its figures", () => {
    let shown = 0;
    fc.assert(
      fc.property(condition, (one) => {
        const draft = draftOf(one, reading);
        if (draft === undefined) return;
        shown += 1;
        expect(read(draft)).toEqual(one);
      }),
      { numRuns: 400 },
    );
    expect(shown).toBeGreaterThan(200);
  });

  test.each<[Condition]>([
    [{ op: "recorded", characteristic: "no.such.thing" }],
    [{ op: "number", characteristic: "body.colour", is: "gt", si: 1 }],
    [{ op: "recorded", characteristic: "body.colour", side: "left" }],
    [{ op: "code", characteristic: "body.style", in: ["coupe", "no such style"] }],
    [{ op: "all", of: Array.from({ length: 41 }, () => ({ op: "always" as const })) }],
  ])("%j is more than the form holds, and left to words", (one) => {
    expect(draftOf(one, reading)).toBeUndefined();
  });
});

describe("the characteristics that words of a search name", () => {
  const named = (text: string) => namedCharacteristics(builtInBook, text).map(({ label }) => label);

  test("are those of which a name has each of them, without capitals and accents", () => {
    expect(named("damper").length).toBeGreaterThan(3);
    for (const label of named("Dämper")) expect(label.toLowerCase()).toContain("damper");
    expect(named("front camb")).toEqual(["Front camber"]);
    expect(named('"camber" rear')[0]).toBe("Rear camber");
  });

  test("are none for words that name none, for numbers, and for a letter or two", () => {
    for (const text of ["", "S2-0145", "moss green", "damper moss", "fr", "amper"])
      expect(named(text)).toEqual([]);
  });
});

describe("finding a characteristic", () => {
  test.each([
    ["anti roll bar rear diam", "rear.antiRollBar.diameter"],
    ["camber", "front.camber"],
    ["tracking rear", "rear.toe"],
  ])("by %j proposes %s first", (text, key) => {
    expect(likelyCharacteristics(builtInBook, text, 5)[0]?.key).toBe(key);
  });

  test.each([["zzz"], [""], [" - "]])("by %j finds none", (text) => {
    expect(likelyCharacteristics(builtInBook, text, 5)).toEqual([]);
  });
});
