import { z } from "zod";
import { defineComputation, type WorkingStep } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { springRateForWheelRate } from "../spring/wheel";
import { worked } from "../spring/worked";
import { type AxleName, axleNames, type RollCar } from "./car";
import { bodySteps } from "./cornering.entry";
import {
  axleFields,
  axleSteps,
  carOf,
  cgHeightField,
  exampleAxles,
  rollSources,
  rollValidity,
} from "./field";
import { rollGradient } from "./gradient";
import { reachRoll, rollChanges } from "./target";

const axle = z.strictObject({
  ...axleFields,
  barDiameter: quantity("length", {
    label: "Present bar, outside diameter",
    help: "Gives the diameter of a bar of the same shape that reaches the aim",
    above: 0,
    max: 0.1,
    unit: "mm",
  }).optional(),
  springMotionRatio: quantity("ratio", {
    label: "Motion ratio of the springs",
    help: "Gives the rate of the spring itself",
    above: 0,
    max: 2,
  }).optional(),
});
type AxleInput = z.output<typeof axle>;
const input = z.object({
  front: axle,
  rear: axle,
  cgHeight: cgHeightField,
  change: z.enum(rollChanges).meta({
    title: "What may be changed",
    description:
      "bars or springs at both ends reach a roll gradient and a front share together; one end reaches one of them",
  }),
  gradient: quantity("anglePerAcceleration", {
    label: "Wanted roll gradient",
    above: 0,
    max: 0.1,
    unit: "°/g",
  }).optional(),
  frontTransferShare: quantity("ratio", {
    label: "Wanted front share of load transfer",
    above: 0,
    below: 1,
    unit: "%",
  }).optional(),
});
const rate = (label: string) => ({ label, dimension: "rate", unit: "N/mm" }) as const;
const diameter = (label: string) => ({ label, dimension: "length", unit: "mm", decimals: 1 }) as const;

export const rollTargetComputation = defineComputation({
  name: "roll.target",
  title: "Bars or springs for a wanted roll and balance",
  summary: "Which anti-roll bars or springs reach a wanted roll gradient and front share of load transfer.",
  input,
  outputs: {
    frontBarWheelRate: rate("Front bar at the wheel"),
    rearBarWheelRate: rate("Rear bar at the wheel"),
    frontBarDiameter: diameter("Front bar of the same shape"),
    rearBarDiameter: diameter("Rear bar of the same shape"),
    frontSpringWheelRate: rate("Front wheel rate"),
    rearSpringWheelRate: rate("Rear wheel rate"),
    frontSpringRate: {
      ...rate("Front spring"),
      how: ["k_f", "front wheel rate over the square of its motion ratio, where that is given"],
    },
    rearSpringRate: { ...rate("Rear spring"), how: ["k_r", "as above, of the rear"] },
    gradient: {
      how: ["φ′_r", "roll gradient worked anew with these rates"],
      label: "Roll gradient reached",
      dimension: "anglePerAcceleration",
      unit: "°/g",
      decimals: 2,
    },
    frontTransferShare: {
      how: ["λ_r", "front share of load transfer worked anew with these rates"],
      label: "Front share of load transfer reached",
      dimension: "ratio",
      unit: "%",
      decimals: 1,
    },
  },
  source: rollSources,
  validity: `${rollValidity} Aims are for small lateral acceleration; a bar of the same shape goes with the fourth power of its diameter, soft links and bushes left out.`,
  caution:
    "A car that understeers less may oversteer. Try changes in small steps, off the public road; links and brackets must stand the stiffer bar.",
  example: {
    front: { ...exampleAxles.front, barDiameter: "16 mm" },
    rear: { ...exampleAxles.rear, barDiameter: "12 mm" },
    cgHeight: "440 mm",
    change: "bars",
    gradient: "4 °/g",
    frontTransferShare: "52 %",
  },
  compute(given) {
    const present = carOf(given);
    const aim = { gradient: given.gradient, frontTransferShare: given.frontTransferShare };
    const car = reachRoll(present, { change: given.change, aim });
    const reached = rollGradient(car);
    const bars = {
      front: sameShape(given.front, car.front.barWheelRate),
      rear: sameShape(given.rear, car.rear.barWheelRate),
    };
    const outputs = {
      frontBarWheelRate: car.front.barWheelRate,
      rearBarWheelRate: car.rear.barWheelRate,
      frontBarDiameter: bars.front,
      rearBarDiameter: bars.rear,
      frontSpringWheelRate: car.front.springWheelRate,
      rearSpringWheelRate: car.rear.springWheelRate,
      frontSpringRate: springOf(given.front, car.front.springWheelRate),
      rearSpringRate: springOf(given.rear, car.rear.springWheelRate),
      gradient: reached.gradient,
      frontTransferShare: reached.frontTransferShare,
    };
    const working = () => [
      ...axleSteps(axle, given),
      ...givenSteps(input, given, { symbols: { cgHeight: "h", gradient: "φ′*", frontTransferShare: "λ*" } }),
      ...bodySteps(present),
      ...axleNames.flatMap((name) => foundSteps(name, { present, car, bar: bars[name] })),
    ];
    return { outputs, working, warnings: warningsOf(given.front, given.rear) };
  },
});

/** Diameter of a bar of the same shape at another rate; `null` where the present bar is not known. */
function sameShape({ barDiameter, barWheelRate }: AxleInput, wanted: number): number | null {
  if (barDiameter === undefined || barWheelRate === undefined || barWheelRate === 0) return null;
  return barDiameter * (wanted / barWheelRate) ** 0.25;
}

function springOf({ springMotionRatio }: AxleInput, wheelRate: number): number | null {
  return springMotionRatio === undefined ? null : springRateForWheelRate(wheelRate, springMotionRatio);
}

interface Found {
  readonly present: RollCar;
  readonly car: RollCar;
  readonly bar: number | null;
}

function foundSteps(name: AxleName, { present, car, bar }: Found): WorkingStep[] {
  const [index, word] = name === "front" ? ["f", "Front"] : ["r", "Rear"];
  const closed =
    "the axle moments per acceleration that give φ′* and λ*, over the roll left to springs and bar";
  const changed =
    car[name].barWheelRate !== present[name].barWheelRate ||
    car[name].springWheelRate !== present[name].springWheelRate;
  if (!changed) return [];
  return worked([
    [`k_b${index}`, `${word} bar at the wheel`, closed, car[name].barWheelRate, "rate", "N/mm"],
    [`k_s${index}`, `${word} wheel rate`, closed, car[name].springWheelRate, "rate", "N/mm"],
    [`d_${index}`, `${word} bar of the same shape`, "d·(k_b new/k_b present)^¼", bar, "length", "mm"],
  ]);
}

function warningsOf(front: AxleInput, rear: AxleInput): string[] {
  const nameless = [front, rear].some(
    ({ barDiameter, barWheelRate }) => barDiameter !== undefined && !barWheelRate,
  );
  return nameless
    ? ["A bar diameter is given without the bar's rate at the wheel: no new diameter follows from it."]
    : [];
}
