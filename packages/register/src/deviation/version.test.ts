import { expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { entriesFor } from "../specification/entry";
import type { SpecificationEntry } from "../specification/specification";
import { stateOn } from "../state/fold";
import type { AcceptedModification, AsBuiltValue, Reading } from "../state/state";
import { sampleValue } from "../value/sample";
import { deviationsFromFactory } from "./compare";
import { ENGINE_VERSION } from "./version";

const source = { title: "Works manual", trust: "documented" } as const;
const degree = Math.PI / 180;

const entry = (characteristic: string, more: Partial<SpecificationEntry>): SpecificationEntry => ({
  id: characteristic,
  characteristic,
  side: "whole",
  alternatives: [],
  applicability: {},
  source,
  ...more,
});

const entries: readonly SpecificationEntry[] = [
  entry("front.camber", {
    nominal: sampleValue("front.camber", "0°"),
    limits: { lower: -degree / 2, upper: degree / 2 },
  }),
  entry("front.antiRollBar.diameter", {
    nominal: sampleValue("front.antiRollBar.diameter", "9/16 in"),
    alternatives: [
      { role: "periodOption", value: sampleValue("front.antiRollBar.diameter", "5/8 in"), source },
    ],
  }),
  entry("rear.antiRollBar.diameter", { nominal: sampleValue("rear.antiRollBar.diameter", "not fitted") }),
  entry("front.disc.face", { nominal: sampleValue("front.disc.face", "plain") }),
];

const value = (characteristic: string, entered: string) => sampleValue(characteristic, entered);
const asBuilt: readonly AsBuiltValue[] = [
  {
    id: "A",
    characteristic: "front.disc.face",
    side: "whole",
    value: value("front.disc.face", "plain"),
    source,
  },
];
const modifications: readonly AcceptedModification[] = [
  {
    id: "M",
    on: "1998-03-12",
    sequence: 1,
    source,
    changes: [
      {
        characteristic: "front.antiRollBar.diameter",
        side: "whole",
        after: value("front.antiRollBar.diameter", "5/8 in"),
      },
      {
        characteristic: "rear.antiRollBar.diameter",
        side: "whole",
        after: value("rear.antiRollBar.diameter", "16 mm"),
      },
    ],
  },
];
const reading = (side: "left" | "right", entered: string): Reading => ({
  id: side,
  on: "2026-04-01",
  sequence: 1,
  characteristic: "front.camber",
  side,
  value: value("front.camber", entered),
  source,
});

// Where this list has to change, cars in every database out there are judged otherwise from now on: count
// ENGINE_VERSION up, or they keep what the version before made of them.
test("a version of the engines stands for what these records come to", () => {
  const basis = { options: [] };
  const specification = { id: "S", version: 1, entries };
  const applying = entriesFor(specification, basis, builtInBook);
  const readings = [reading("left", "-0°10'"), reading("right", "-0.5°")];
  const state = stateOn("2026-06-01", { entries: applying, asBuilt, modifications, readings });
  const verdicts = deviationsFromFactory(state, applying, builtInBook).map(
    ({ characteristic, side, verdict }) => `${characteristic} ${side}: ${verdict}`,
  );
  expect({ version: ENGINE_VERSION, verdicts: verdicts.sort() }).toEqual({
    version: 1,
    verdicts: [
      "front.antiRollBar.diameter whole: periodOption",
      "front.camber left: insideLimits",
      "front.camber right: cannotTell",
      "front.disc.face whole: asSpecified",
      "rear.antiRollBar.diameter whole: added",
    ],
  });
});
