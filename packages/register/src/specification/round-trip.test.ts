import { printQuantity, unitsOf } from "@trunnion/calc";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import type { Characteristic } from "../characteristic/characteristic";
import { parseValue } from "../value/parse";
import type { Value } from "../value/value";
import { guardCell, joinCell, splitCell, unguardCell } from "./cell";
import { checkSpecification } from "./check";
import { applyDifference, sameEntry, specificationDifference } from "./difference";
import { entryText, inRoleOrder } from "./entry-text";
import { readEntryText } from "./read-entry";
import {
  type Alternative,
  type Applicability,
  alternativeRoles,
  noSourceTitle,
  type Source,
  type SpecificationEntry,
  trusts,
} from "./specification";
import { headingProblem, readSpecificationTable, specificationTable } from "./table";

const designations: Readonly<Record<string, readonly string[]>> = {
  thread: ["7/16-20 UNF", "M10x1.5", "5/16-24 UNF"],
  grade: ["8.8", "grade 8", "10.9"],
  tyre: ["5.20-13", "175/70 R 13", "165 SR 13"],
  wheel: ["4½J x 13", "5J x 14"],
};

/** Entries that read as a characteristic's values, whatever its kind; those that do not are left out. */
function entriesThatRead(characteristic: Characteristic, texts: readonly string[]): readonly string[] {
  return texts.filter((text) => parseValue(characteristic, text).ok);
}

function textsOf(characteristic: Characteristic): fc.Arbitrary<string> {
  switch (characteristic.kind) {
    case "quantity": {
      const { dimension, notation, minimum = -1, maximum = 1000 } = characteristic;
      if (dimension === "text") throw new Error("a quantity without dimension");
      if (notation === "toe") {
        return fc
          .integer({ min: 1, max: 80 })
          .chain((minutes) =>
            fc.constantFrom(
              `${minutes}' in per side`,
              `0°${minutes}' toe-out total`,
              `${minutes / 10} mm toe-in total on 13 in rim`,
            ),
          );
      }
      return fc
        .tuple(
          fc.double({ min: minimum, max: maximum, noNaN: true }),
          fc.constantFrom(...unitsOf(dimension).map(({ symbol }) => symbol)),
          fc.integer({ min: 0, max: 4 }),
        )
        .map(([si, unit, decimals]) => printQuantity(si, { dimension, unit, decimals }));
    }
    case "choice":
      return fc.constantFrom(
        ...characteristic.choices.flatMap(({ code, label, also = [] }) => [code, label, ...also]),
      );
    case "designation":
      return fc.constantFrom(...(designations[characteristic.designation] ?? []));
    case "text":
      return fc.constantFrom(
        "Örn 4",
        "a | b",
        "back\\slash",
        "=1+1",
        "'=quoted",
        "-cmd",
        'with "marks", and; these',
      );
    case "date":
      return fc.constantFrom("2027-06-30", "6/2027", "2027");
  }
}

/** All kinds, sided and not, settings and parts, angles with their own notation. */
const characteristics = [
  "front.antiRollBar.diameter",
  "front.camber",
  "front.toe",
  "tyres.front.pressure",
  "front.spring.rate",
  "front.cornerWeight",
  "brakes.bias",
  "front.lowerArm.bush",
  "tyres.front.size",
  "front.caliper.boltThread",
  "body.colour",
  "safety.harness.expires",
].map((key) => {
  const found = builtInBook.find(key);
  if (found === undefined) throw new Error(`no characteristic ${key}`);
  return found;
});

function reading(characteristic: Characteristic, text: string): Value {
  const parsed = parseValue(characteristic, text);
  if (!parsed.ok) throw new Error(parsed.problem.message);
  return parsed.value;
}

const valuesOf = (characteristic: Characteristic): fc.Arbitrary<Value> =>
  textsOf(characteristic)
    .filter((text) => entriesThatRead(characteristic, [text]).length > 0)
    .map((text) => reading(characteristic, text));

const note = fc.option(
  fc.constantFrom("as revised", "two\nlines", "=SUM(A1)", "a | b \\ c", "-5 lb/in", "'+x"),
  {
    nil: undefined,
  },
);
const source: fc.Arbitrary<Source> = fc
  .record({
    title: fc.constantFrom("Works manual", "Supplement, 3rd", noSourceTitle),
    locus: fc.option(fc.constantFrom("p. 12", "section A"), { nil: undefined }),
    trust: fc.constantFrom(...trusts),
  })
  .map(({ locus, ...rest }) => ({ ...rest, ...(locus === undefined ? {} : { locus }) }));

const applicability: fc.Arbitrary<Applicability> = fc
  .record({
    serialFrom: fc.option(fc.integer({ min: 1, max: 40 }), { nil: undefined }),
    serialTo: fc.option(fc.integer({ min: 41, max: 99 }), { nil: undefined }),
    builtFrom: fc.option(fc.constantFrom("1970-01-01", "1971-07-01"), { nil: undefined }),
    builtTo: fc.option(fc.constantFrom("1972-12-31"), { nil: undefined }),
    option: fc.option(fc.constantFrom("H", "OD"), { nil: undefined }),
  })
  .map((parts) => Object.fromEntries(Object.entries(parts).filter(([, part]) => part !== undefined)));

function alternativesOf(characteristic: Characteristic): fc.Arbitrary<readonly Alternative[]> {
  const one = fc
    .record({ role: fc.constantFrom(...alternativeRoles), value: valuesOf(characteristic), note, source })
    .map(({ note: said, ...rest }) => ({ ...rest, ...(said === undefined ? {} : { note: said }) }));
  return fc.array(one, { maxLength: 3 }).map(inRoleOrder);
}

function limitsOf(characteristic: Characteristic) {
  if (characteristic.kind !== "quantity") return fc.constant(undefined);
  const ends = fc.tuple(
    valuesOf(characteristic),
    valuesOf(characteristic),
    fc.constantFrom("both", "lower", "upper"),
  );
  return fc.option(
    ends.map(([one, other, which]) => {
      const [lower = 0, upper = 0] = [one, other]
        .map((value) => (value.kind === "quantity" ? value.si : 0))
        .sort((a, b) => a - b);
      return { ...(which === "upper" ? {} : { lower }), ...(which === "lower" ? {} : { upper }) };
    }),
    { nil: undefined },
  );
}

let last = 0;
const entry: fc.Arbitrary<SpecificationEntry> = fc.constantFrom(...characteristics).chain((characteristic) =>
  fc
    .record({
      side: characteristic.sided
        ? fc.constantFrom("whole" as const, "left" as const, "right" as const)
        : fc.constant("whole" as const),
      nominal: fc.option(valuesOf(characteristic), { nil: undefined }),
      limits: limitsOf(characteristic),
      alternatives: alternativesOf(characteristic),
      applicability,
      source,
      note,
    })
    .map(({ nominal, limits, note: said, ...rest }) => ({
      id: `e${++last}`,
      characteristic: characteristic.key,
      ...rest,
      ...(nominal === undefined ? {} : { nominal }),
      ...(limits === undefined ? {} : { limits }),
      ...(said === undefined ? {} : { note: said }),
    }))
    .filter((one) => checkSpecification({ entries: [one] }, builtInBook).length === 0),
);
const entries = fc.array(entry, { maxLength: 12 });

const plainly = (list: readonly SpecificationEntry[]) => list.map(({ id: _, ...rest }) => rest);
/** Two specifications that say the same in any order. */
function sameSpecification(
  one: readonly SpecificationEntry[],
  other: readonly SpecificationEntry[],
): boolean {
  const left = [...other];
  for (const each of one) {
    const at = left.findIndex((candidate) => sameEntry(candidate, each));
    if (at < 0) return false;
    left.splice(at, 1);
  }
  return left.length === 0;
}

describe("an entry as text", () => {
  test("reads back to the same entry, limits to the last bits that notation keeps", () => {
    const property = fc.property(entry, (one) => {
      const read = readEntryText(entryText(one, builtInBook), { id: one.id, book: builtInBook });
      expect(read).toMatchObject({ ok: true });
      if (read.ok) expect(sameEntry(read.entry, one), JSON.stringify([read.entry, one])).toBe(true);
    });
    fc.assert(property, { numRuns: 300 });
  });
});

describe("a specification as a table", () => {
  test("reads back to the same specification, as text of cells that no spreadsheet takes for formulas", () => {
    const property = fc.property(entries, (list) => {
      const { headings, rows } = specificationTable(list, builtInBook);
      for (const cell of rows.flat()) expect(cell).not.toMatch(/^[=@]|^[+-](?![\d.,])/);
      const table = {
        headings,
        rows: rows.map((cells, index) => ({ line: index + 2, cells: cells.map((cell) => cell.trim()) })),
      };
      expect(headingProblem(table)).toBeUndefined();
      let id = 0;
      const read = readSpecificationTable(table, { book: builtInBook, newId: () => `r${++id}` });
      expect(read.problems).toEqual([]);
      expect(specificationDifference(list, read.entries)).toEqual([]);
      expect(plainly(read.entries).map(({ characteristic }) => characteristic)).toEqual(
        list.map(({ characteristic }) => characteristic),
      );
    });
    fc.assert(property, { numRuns: 60 });
  });

  test("keeps any texts in one cell, and any cell behind the guard", () => {
    const text = fc.string({ maxLength: 12 }).map((one) => one.trim());
    fc.assert(
      fc.property(fc.array(text, { minLength: 1, maxLength: 5 }), (texts) => {
        const cell = joinCell(texts);
        expect(splitCell(cell.trim())).toEqual(texts.every((one) => one === "") ? [] : texts);
        expect(unguardCell(guardCell(cell))).toBe(cell);
      }),
    );
  });
});

describe("the difference of two specifications", () => {
  test("with itself is empty, in any order of the entries", () => {
    fc.assert(
      fc.property(entries, (list) => {
        expect(specificationDifference(list, list)).toEqual([]);
        expect(specificationDifference(list, list.toReversed())).toEqual([]);
      }),
      { numRuns: 80 },
    );
  });

  test("applied to the one gives the other, and turned round gives the one back", () => {
    fc.assert(
      fc.property(entries, entries, fc.subarray([0, 1, 2, 3, 4, 5]), (a, other, kept) => {
        // Entries in common, as two versions of one specification have.
        const b = [...other, ...a.filter((_, index) => kept.includes(index))];
        expect(sameSpecification(applyDifference(a, specificationDifference(a, b)), b)).toBe(true);
        expect(sameSpecification(applyDifference(b, specificationDifference(b, a)), a)).toBe(true);
      }),
      { numRuns: 80 },
    );
  });

  test("names no more entries than there are, each once", () => {
    fc.assert(
      fc.property(entries, entries, (a, b) => {
        const changes = specificationDifference(a, b);
        const before = changes.flatMap((change) => (change.kind === "added" ? [] : [change.before.id]));
        const after = changes.flatMap((change) => (change.kind === "removed" ? [] : [change.after.id]));
        expect(new Set(before).size).toBe(before.length);
        expect(new Set(after).size).toBe(after.length);
      }),
      { numRuns: 80 },
    );
  });

  test("is refused by a specification that lacks what it changes", () => {
    const [one] = fc.sample(entry, { numRuns: 1, seed: 1 });
    if (one === undefined) throw new Error("no sample");
    expect(() => applyDifference([], [{ kind: "removed", before: one }])).toThrow(RangeError);
  });
});
