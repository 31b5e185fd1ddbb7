import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { CalcRefusal } from "../catalogue/refusal";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { ballastMass, ballastPlace, together } from "./ballast";
import { wheelbaseField } from "./field";
import { ballastCaution, statics } from "./source";

const input = z.object({
  frontMass: quantity("mass", { label: "Mass on the front wheels", above: 0, max: 5000 }),
  rearMass: quantity("mass", { label: "Mass on the rear wheels", above: 0, max: 5000 }),
  wheelbase: wheelbaseField,
  frontShare: quantity("ratio", { label: "Front share wanted", above: 0, below: 1, unit: "%" }).optional(),
  total: quantity("mass", {
    label: "Total mass wanted",
    help: "A minimum weight, for instance",
    above: 0,
    max: 10_000,
  }).optional(),
  ballastAt: quantity("length", {
    label: "Where ballast can go, behind the front axle",
    help: "Negative: ahead of it",
    min: -3,
    max: 6,
    unit: "mm",
  }).optional(),
});
type Input = z.output<typeof input>;

export const ballastComputation = defineComputation({
  name: "weight.ballast",
  title: "Ballast to reach a target",
  summary:
    "How much ballast at a given place, or where a given amount must go, to reach a front share or a total mass.",
  input,
  outputs: {
    ballast: { label: "Ballast", dimension: "mass", unit: "kg", decimals: 1 },
    place: { label: "Where, behind the front axle", dimension: "length", unit: "mm", decimals: 0 },
    total: {
      how: ["m′", "mass now + m_b"],
      label: "Total mass then",
      dimension: "mass",
      unit: "kg",
      decimals: 1,
    },
    front: {
      how: ["m_f′", "φ′ of the mass then"],
      label: "On the front wheels then",
      dimension: "mass",
      unit: "kg",
      decimals: 1,
    },
    rear: {
      how: ["m_r′", "the rest of the mass then"],
      label: "On the rear wheels then",
      dimension: "mass",
      unit: "kg",
      decimals: 1,
    },
    frontShare: { label: "Front share then", dimension: "ratio", unit: "%", decimals: 2 },
  },
  source: [statics],
  validity: "The level car, ballast as a point. Give two of: front share wanted, total wanted, place.",
  caution: ballastCaution,
  example: {
    frontMass: "376 kg",
    rearMass: "424 kg",
    wheelbase: "2300 mm",
    frontShare: "48 %",
    ballastAt: "-300 mm",
  },
  compute(given) {
    const { wheelbase } = given;
    const mass = given.frontMass + given.rearMass;
    const car = { mass, at: (given.rearMass / mass) * wheelbase };
    const { ballast, place } = solve(given, car);
    const loaded = together(car, { mass: ballast, at: place });
    const frontShare = 1 - loaded.at / wheelbase;
    const working = () => [
      ...givenSteps(input, given, { symbols }),
      ...worked([
        ["x", "Centre of gravity now, behind the front axle", "L·m_r/m", car.at, "length", "mm"],
        [
          "x*",
          "… wanted",
          "L·(1 − φ)",
          given.frontShare === undefined ? null : (1 - given.frontShare) * wheelbase,
          "length",
          "mm",
        ],
        [
          "m_b",
          "Ballast",
          given.total === undefined ? "m·(x* − x)/(x_b − x*)" : "m* − m",
          ballast,
          "mass",
          "kg",
        ],
        [
          "x_b",
          "Where it goes",
          given.ballastAt === undefined ? "x* + m·(x* − x)/m_b" : "given",
          place,
          "length",
          "mm",
        ],
        ["φ′", "Front share then", "1 − (m·x + m_b·x_b)/((m + m_b)·L)", frontShare, "ratio", "%"],
      ]),
    ];
    const outputs = {
      ballast,
      place,
      total: loaded.mass,
      front: loaded.mass * frontShare,
      rear: loaded.mass * (1 - frontShare),
      frontShare,
    };
    return { outputs, working, warnings: warningsOf(place, ballast, { wheelbase, mass }) };
  },
});

const symbols = {
  frontMass: "m_f",
  rearMass: "m_r",
  wheelbase: "L",
  frontShare: "φ",
  total: "m*",
  ballastAt: "x_b",
};

function solve({ frontShare, total, ballastAt, wheelbase }: Input, car: { mass: number; at: number }) {
  const wanted = frontShare === undefined ? undefined : (1 - frontShare) * wheelbase;
  if (wanted !== undefined && ballastAt !== undefined && total === undefined)
    return { ballast: ballastMass(car, wanted, ballastAt), place: ballastAt };
  if (total !== undefined && wanted !== undefined && ballastAt === undefined)
    return { ballast: added(total, car.mass), place: ballastPlace(car, wanted, added(total, car.mass)) };
  if (total !== undefined && ballastAt !== undefined && wanted === undefined)
    return { ballast: added(total, car.mass), place: ballastAt };
  throw new CalcRefusal(
    "GIVE_TWO",
    "give two of frontShare, total and ballastAt, and not all three",
    "frontShare",
  );
}

function added(total: number, mass: number): number {
  if (total > mass) return total - mass;
  throw new CalcRefusal(
    "ALREADY_HEAVIER",
    `the car has ${mass.toFixed(1)} kg already; ballast cannot bring it to ${total.toFixed(1)} kg`,
    "total",
  );
}

function warningsOf(
  place: number,
  ballast: number,
  { wheelbase, mass }: { wheelbase: number; mass: number },
): string[] {
  const warnings: string[] = [];
  if (place < -0.4 * wheelbase || place > 1.4 * wheelbase)
    warnings.push("That place lies outside most cars: use more ballast.");
  if (ballast > 0.1 * mass)
    warnings.push("More than a tenth of the car's mass: brakes, tyres and springs carry it too.");
  return warnings;
}
