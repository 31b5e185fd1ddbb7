import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { deviationsFromFactory } from "../deviation/compare";
import { stateOn } from "../state/fold";
import { sampleValue } from "../value/sample";
import { specificationDifference } from "./difference";
import { entriesFor } from "./entry";
import { countMoves, movedVerdicts } from "./moved-verdict";
import { entryChangeLine } from "./say-difference";
import { entryLine, sayWhichCars } from "./say-entry";
import type { SpecificationEntry } from "./specification";

const source = { title: "Works manual", locus: "p. 12", trust: "documented" } as const;
const pattern = { series: "Mark 1", prefix: "M1-", digits: 3, first: 1, last: 120, suffixes: [] };
const words = { book: builtInBook, system: "metric", pattern, options: { H: "handling pack" } } as const;
const minute = Math.PI / 10_800;

function bar(parts: Partial<SpecificationEntry> = {}): SpecificationEntry {
  const characteristic = "front.antiRollBar.diameter";
  const nominal = sampleValue(characteristic, "9/16 in");
  return {
    id: "bar",
    characteristic,
    side: "whole",
    nominal,
    alternatives: [],
    applicability: {},
    source,
    ...parts,
  };
}
function camber(parts: Partial<SpecificationEntry> = {}): SpecificationEntry {
  const nominal = sampleValue("front.camber", "0°00'");
  const limits = { lower: -30 * minute, upper: 30 * minute };
  return {
    id: "camber",
    characteristic: "front.camber",
    side: "whole",
    nominal,
    limits,
    alternatives: [],
    applicability: {},
    source,
    ...parts,
  };
}

const said = (before: readonly SpecificationEntry[], after: readonly SpecificationEntry[]) =>
  specificationDifference(before, after).map((change) => {
    const { kind, label, fields } = entryChangeLine(change, words);
    return [kind, label, ...fields.map((field) => `${field.label}: ${field.before} → ${field.after}`)];
  });

describe("a difference in words", () => {
  test("tells a limit in the notation of its nominal", () => {
    expect(said([camber()], [camber({ limits: { lower: -30 * minute, upper: 45 * minute } })])).toEqual([
      ["changed", "Front camber", "Upper limit: 0°30' → 0°45'"],
    ]);
  });

  test("tells alternatives one by one, and a note or source that changed", () => {
    const substitute = {
      role: "acceptedSubstitute" as const,
      value: sampleValue("front.antiRollBar.diameter", "5/8 in"),
      source,
    };
    const option = {
      role: "periodOption" as const,
      value: sampleValue("front.antiRollBar.diameter", "18 mm"),
      source,
    };
    expect(
      said(
        [bar({ alternatives: [substitute] })],
        [
          bar({
            alternatives: [{ ...substitute, note: "with links" }, option],
            source: { title: "Bulletin", trust: "stated" },
          }),
        ],
      ),
    ).toEqual([
      [
        "changed",
        "Front anti-roll bar diameter",
        "Accepted substitute 5/8 in: Works manual, p. 12 (documented) → with links; Works manual, p. 12 (documented)",
        "Source: Works manual, p. 12 (documented) → Bulletin (stated)",
        "Period option 18 mm:  → Works manual, p. 12 (documented)",
      ],
    ]);
    const two = { ...option, role: "acceptedSubstitute" as const };
    expect(
      said([bar({ alternatives: [substitute, two] })], [bar({ alternatives: [two, substitute] })]),
    ).toEqual([
      ["changed", "Front anti-roll bar diameter", "Order of alternatives: 5/8 in, 18 mm → 18 mm, 5/8 in"],
    ]);
  });

  test("takes an entry whose span moved for the same entry, and one beside it for a new one", () => {
    const early = bar({ id: "early", applicability: { serialTo: 60 } });
    const later = bar({ id: "later", applicability: { serialTo: 70 } });
    const late = bar({
      id: "late",
      applicability: { serialFrom: 71 },
      nominal: sampleValue("front.antiRollBar.diameter", "16 mm"),
    });
    expect(said([early], [later, late])).toEqual([
      ["changed", "Front anti-roll bar diameter", "Holds for: up to M1-060 → up to M1-070"],
      [
        "added",
        "Front anti-roll bar diameter",
        "Nominal:  → 16 mm",
        "Holds for:  → from M1-071",
        "Source:  → Works manual, p. 12 (documented)",
      ],
    ]);
    expect(said([late], [])[0]?.slice(0, 3)).toEqual([
      "removed",
      "Front anti-roll bar diameter",
      "Nominal: 16 mm → ",
    ]);
  });
});

describe("an entry in words", () => {
  test("says its limits in the nominal's unit, its alternatives by role, and whom it holds for", () => {
    const line = entryLine(
      camber({ applicability: { serialFrom: 61, builtTo: "1972-06-30", option: "H" }, side: "left" }),
      words,
    );
    expect(line).toMatchObject({
      nominal: "0°00'",
      limits: "-0°30' to 0°30'",
      side: "left",
      cars: "from M1-061, built up to 30 Jun 1972, option H (handling pack)",
    });
    expect(
      sayWhichCars({ serialFrom: 3, serialTo: 9, option: "OD" }, { book: builtInBook, system: "metric" }),
    ).toBe("numbers 3 to 9, option OD");
    expect(sayWhichCars({}, words)).toBe("");
  });

  test("shows a choice by its label, and a characteristic nobody knows any more by its key", () => {
    const bush = bar({
      characteristic: "front.lowerArm.bush",
      nominal: sampleValue("front.lowerArm.bush", "rubber"),
    });
    expect(entryLine(bush, words)).toMatchObject({ nominal: "Rubber bush", label: "Front lower arm bush" });
    expect(entryLine({ ...bush, characteristic: "club.gone" }, words)).toMatchObject({
      label: "club.gone",
      nominal: "rubber",
    });
  });
});

describe("verdicts that another specification moves", () => {
  test("are those that are not the same, counted by what became what", () => {
    const judged = (entries: readonly SpecificationEntry[]) => {
      const own = entriesFor({ id: "s", version: 1, entries }, { options: [] }, builtInBook);
      const reading = (side: "left" | "right", entered: string) => ({
        id: side,
        on: "2026-01-01",
        sequence: 1,
        characteristic: "front.camber",
        side,
        value: sampleValue("front.camber", entered),
        source,
      });
      const state = stateOn("2026-06-01", {
        entries: own,
        asBuilt: [],
        modifications: [],
        readings: [reading("left", "0°40'"), reading("right", "0°10'")],
      });
      return deviationsFromFactory(state, own, builtInBook);
    };
    const before = judged([camber()]);
    const wider = judged([camber({ limits: { lower: -30 * minute, upper: 60 * minute } })]);
    const moves = movedVerdicts(before, wider);
    expect(moves.map(({ side, before: was, after: is }) => [side, was?.verdict, is?.verdict])).toEqual([
      ["left", "outsideLimits", "insideLimits"],
    ]);
    const gone = movedVerdicts(before, judged([]));
    expect(countMoves([...moves, ...gone])).toEqual([
      { before: "outsideLimits", after: "insideLimits", count: 1 },
      { before: "outsideLimits", after: undefined, count: 1 },
      { before: "insideLimits", after: undefined, count: 1 },
    ]);
    expect(movedVerdicts(before, before)).toEqual([]);
    const unrecorded = before.map((one) => ({ ...one, verdict: "notRecorded" as const }));
    expect(movedVerdicts(unrecorded, [])).toEqual([]);
  });
});
