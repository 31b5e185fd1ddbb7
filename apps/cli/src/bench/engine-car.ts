import {
  type AcceptedModification,
  type AsBuiltValue,
  builtInBook,
  type CarBasis,
  consequencesOf,
  deviationsFromFactory,
  entriesFor,
  parseValue,
  type Reading,
  type Side,
  type Specification,
  type SpecificationEntry,
  stateOn,
  type Value,
} from "@trunnion/register";

const source = { title: "bench", trust: "documented" } as const;
export const day = "2026-11-25";

/** A plausible value of every quantity of the dictionary: the middle of what is believable. */
function middleValues(): readonly { readonly key: string; readonly value: Value; readonly sided: boolean }[] {
  return builtInBook.all.flatMap((one) => {
    if (one.kind !== "quantity" || one.minimum === undefined || one.maximum === undefined) return [];
    const si = (one.minimum + one.maximum) / 2;
    return [
      {
        key: one.key,
        sided: one.sided,
        value: { kind: "quantity", si, resolution: si / 100, entered: "bench" },
      },
    ];
  });
}

const values = middleValues();

export const specification: Specification = {
  id: "bench",
  version: 1,
  entries: values.map(
    ({ key, value }, index): SpecificationEntry => ({
      id: `e${index}`,
      characteristic: key,
      side: "whole",
      nominal: value,
      alternatives: [],
      applicability: {},
      source,
    }),
  ),
};

/** A car that differs from its specification at every seventh characteristic. */
export function carOf(serial: number): Car {
  const basis: CarBasis = { serial, options: [] };
  const asBuilt: AsBuiltValue[] = [];
  const readings: Reading[] = [];
  for (const [index, { key, value, sided }] of values.entries()) {
    if (value.kind !== "quantity") continue;
    const own = (index + serial) % 7 === 0 ? { ...value, si: value.si * 1.05 } : value;
    for (const side of sided ? (["left", "right"] as const) : (["whole"] as const)) {
      const id = `${serial}-${index}-${side}`;
      if (index % 2 === 0) asBuilt.push({ id, characteristic: key, side, value: own, source });
      else
        readings.push({ id, on: "2026-05-01", sequence: 1, characteristic: key, side, value: own, source });
    }
  }
  return { basis, asBuilt, modifications: [], readings };
}

/** What a car's state is folded from. */
export interface Car {
  readonly basis: CarBasis;
  readonly asBuilt: readonly AsBuiltValue[];
  readonly modifications: readonly AcceptedModification[];
  readonly readings: readonly Reading[];
}

/** What the calculator asks for, of a car of the kind; the second figure is what was changed on it. */
const asked: Readonly<Record<string, readonly [string, string?]>> = {
  "front.antiRollBar.diameter": ["16 mm"],
  "front.antiRollBar.middleLength": ["900 mm"],
  "front.antiRollBar.leverLength": ["200 mm"],
  "front.antiRollBar.armLength": ["215 mm"],
  "front.antiRollBar.motionRatio": ["0.6"],
  "rear.antiRollBar.diameter": ["14 mm", "20 mm"],
  "rear.antiRollBar.middleLength": ["820 mm"],
  "rear.antiRollBar.leverLength": ["210 mm"],
  "rear.antiRollBar.armLength": ["220 mm"],
  "rear.antiRollBar.motionRatio": ["0.7"],
  "front.track": ["1300 mm"],
  "rear.track": ["1290 mm"],
  "front.spring.rate": ["28 N/mm", "35 N/mm"],
  "rear.spring.rate": ["24 N/mm"],
  "front.spring.motionRatio": ["0.72"],
  "rear.spring.motionRatio": ["0.8"],
  "tyres.front.size": ["155/80 R 13", "175/70 R 13"],
  "tyres.rear.size": ["155/80 R 13", "175/70 R 13"],
  "wheels.front.size": ["5J x 13"],
  "wheels.rear.size": ["5J x 13"],
  "driveline.finalDrive.ratio": ["3.9"],
  "front.caliper.pistons": ["2"],
  "front.caliper.pistonDiameter": ["48 mm", "54 mm"],
  "front.disc.diameter": ["9 1/2 in", "10 1/2 in"],
  "rear.dropLink.boltThread": ["M10x1.5"],
  "rear.dropLink.boltGrade": ["10.9"],
  "rear.dropLink.spacerStack": ["10 mm", "20 mm"],
  "front.unsprungMass": ["62 kg"],
  "rear.unsprungMass": ["70 kg"],
  "front.cornerWeight left": ["198 kg"],
  "front.cornerWeight right": ["192 kg"],
  "rear.cornerWeight left": ["216 kg"],
  "rear.cornerWeight right": ["214 kg"],
  "chassis.centreOfGravityHeight": ["480 mm"],
  "front.camber left": ["-0°30'"],
  ...hardpointsAt({
    lowerArmFront: [135, 240, 190],
    lowerArmRear: [-125, 245, 184],
    lowerJoint: [6, 600, 165],
    upperArmFront: [80, 310, 402],
    upperArmRear: [-110, 312, 395],
    upperJoint: [-12, 568, 418],
    tieRodInner: [-118, 258, 213],
    tieRodOuter: [-128, 584, 201],
  }),
  "front.hardpoint.upperJoint.y left": ["568 mm", "575 mm"],
};

/** Millimetres, of the left front suspension. */
function hardpointsAt(points: Readonly<Record<string, readonly [number, number, number]>>) {
  const entries = Object.entries(points).flatMap(([point, at]) =>
    (["x", "y", "z"] as const).map(
      (axis, index) => [`front.hardpoint.${point}.${axis} left`, [`${at[index]} mm`]] as const,
    ),
  );
  return Object.fromEntries(entries) as Record<string, readonly [string]>;
}

/** `key` or `key left` as written above. */
function placeOf(written: string): { readonly characteristic: string; readonly side: Side } {
  const [characteristic = "", side] = written.split(" ");
  return { characteristic, side: side === "left" || side === "right" ? side : "whole" };
}

/** What the kind of car has a value of its own of, or has not at all: its bars are solid. */
const askedKeys: ReadonlySet<string> = new Set([
  ...Object.keys(asked).map((written) => placeOf(written).characteristic),
  "front.antiRollBar.bore",
  "rear.antiRollBar.bore",
]);

function readValue(key: string, entered: string): Value {
  const characteristic = builtInBook.find(key);
  const parsed = characteristic && parseValue(characteristic, entered);
  if (!parsed?.ok) throw new Error(`${key} cannot be ${entered}`);
  return parsed.value;
}

export const askedSpecification: Specification = {
  ...specification,
  entries: [
    ...specification.entries.filter(({ characteristic }) => !askedKeys.has(characteristic)),
    ...Object.entries(asked).map(
      ([written, [entered]]): SpecificationEntry => ({
        id: written,
        ...placeOf(written),
        nominal: readValue(placeOf(written).characteristic, entered),
        alternatives: [],
        applicability: {},
        source,
      }),
    ),
  ],
};

const modification = {
  id: "m",
  on: "2026-03-01",
  sequence: 1,
  source,
  changes: Object.entries(asked).flatMap(([key, [, entered]]) =>
    entered === undefined
      ? []
      : [{ ...placeOf(key), after: readValue(placeOf(key).characteristic, entered) }],
  ),
};

/** A car like `carOf`, with its as-built figures left as specified, and one modification of many parts. */
export function modifiedCar(serial: number): Car {
  const car = carOf(serial);
  const own = ({ characteristic }: { readonly characteristic: string }) => !askedKeys.has(characteristic);
  return {
    ...car,
    asBuilt: car.asBuilt.filter(own),
    readings: car.readings.filter(own),
    modifications: [modification],
  };
}

/** State, deviations, and what its modification did to it: the figures before and after of every binding it reaches. */
export function consider(car: Car): number {
  const entries = entriesFor(askedSpecification, car.basis, builtInBook);
  const state = stateOn(day, { entries, ...car });
  const deviations = deviationsFromFactory(state, entries, builtInBook);
  const before = stateOn(day, { entries, ...car, modifications: [] });
  return deviations.length + consequencesOf(before, state, builtInBook).length;
}
