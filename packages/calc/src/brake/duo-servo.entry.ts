import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { CalcRefusal } from "../catalogue/refusal";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { backwards, type DuoServoDrum, type DuoServoFactor, duoServoFactor } from "./duo-servo";
import { brakeCaution, duoServoShoes, shigleyShoe } from "./source";

const distance = (label: string) => quantity("length", { label, above: 0, max: 0.25, unit: "mm" });
const arc = (label: string) => quantity("angle", { label, above: 0, below: Math.PI, unit: "°" });

const input = z.object({
  friction: quantity("ratio", { label: "Friction of the linings", help: "0.3 to 0.4", above: 0, max: 1 }),
  drumDiameter: quantity("length", { label: "Drum diameter", above: 0, max: 0.5, unit: "mm" }),
  cylinderHeight: distance("Drum centre to the cylinder's line"),
  adjusterDistance: distance("Drum centre to the adjuster between the shoes"),
  anchorDistance: distance("Drum centre to the anchor"),
  primaryStart: arc("Primary lining begins, from the adjuster"),
  primaryEnd: arc("Primary lining ends, from the adjuster"),
  secondaryStart: arc("Secondary lining begins, from the anchor"),
  secondaryEnd: arc("Secondary lining ends, from the anchor"),
  pistonDiameter: quantity("length", {
    label: "Piston diameter at one shoe",
    above: 0,
    max: 0.06,
    unit: "mm",
  }).optional(),
  pressure: quantity("pressure", { label: "Line pressure", min: 0, max: 2e7, unit: "bar" }).optional(),
});
type Input = z.output<typeof input>;
const symbols = {
  friction: "μ",
  drumDiameter: "D",
  cylinderHeight: "h",
  adjusterDistance: "a",
  anchorDistance: "b",
  primaryStart: "θ₁",
  primaryEnd: "θ₂",
  secondaryStart: "θ₃",
  secondaryEnd: "θ₄",
  pistonDiameter: "d",
  pressure: "p",
};

/** Catalogue entry `brake.duoServo`. */
export const duoServoComputation = defineComputation({
  name: "brake.duoServo",
  title: "Brake factor and torque of a duo-servo drum",
  summary:
    "How much a drum whose shoes push one another multiplies the force of its cylinder, forwards and backwards, and its torque.",
  input,
  outputs: {
    brakeFactor: { label: "Brake factor C*, forwards", dimension: "ratio" },
    primary: { label: "Primary shoe", dimension: "ratio" },
    secondary: { label: "Secondary shoe", dimension: "ratio" },
    reverseFactor: {
      how: ["C*_r", "both shoes change parts: the secondary is moved first and feeds the primary"],
      label: "Brake factor C*, backwards",
      dimension: "ratio",
    },
    torque: { label: "Torque of one drum, forwards", dimension: "torque", unit: "N·m" },
    sensitivity: {
      how: ["ΔC*", "factor worked anew at 1.1 times the friction, less C*, over C*"],
      label: "Change of the factor for 10 % more friction",
      dimension: "ratio",
      unit: "%",
    },
  },
  source: [shigleyShoe, duoServoShoes],
  validity:
    "Rigid bedded-in shoes, pressure as the sine of the angle from each shoe's pivot, return springs left out. No brake depends more on its friction: heat, damp and the lining's make count for more than the geometry.",
  caution: brakeCaution,
  example: {
    friction: 0.35,
    drumDiameter: "9 in",
    cylinderHeight: "75 mm",
    adjusterDistance: "85 mm",
    anchorDistance: "95 mm",
    primaryStart: "35°",
    primaryEnd: "125°",
    secondaryStart: "25°",
    secondaryEnd: "140°",
    pistonDiameter: "7/8 in",
    pressure: "40 bar",
  },
  compute(given) {
    const drum = drumOf(given);
    const factor = duoServoFactor(given.friction, drum);
    const more = orLocked(() => duoServoFactor(1.1 * given.friction, drum));
    const back = orLocked(() => duoServoFactor(given.friction, backwards(drum)));
    const force = pistonForce(given);
    const torque = force === null ? null : factor.brakeFactor * force * drum.drumRadius;
    const { primary, secondary, adjusterForce, brakeFactor } = factor;
    const working = () => [
      ...givenSteps(input, given, { symbols }),
      ...worked([
        ["S₁", "Primary shoe", "leading shoe about the adjuster, tip arm a + h", primary, "ratio"],
        ["P/F", "Force in the adjuster over the cylinder's", "(h + S₁·D/2)/a", adjusterForce, "ratio"],
        [
          "S₂",
          "Secondary shoe",
          "(P/F + (b − h)/(a + b))·leading shoe about the anchor, tip arm a + b",
          secondary,
          "ratio",
        ],
        ["C*", "Brake factor", "S₁ + S₂", brakeFactor, "ratio"],
        ["F", "Force at each shoe", "p·π·d²/4", force, "force", "N"],
        ["T", "Torque", "C*·F·D/2", torque, "torque", "N·m"],
      ]),
    ];
    const outputs = {
      brakeFactor,
      primary,
      secondary,
      reverseFactor: back?.brakeFactor ?? null,
      torque,
      sensitivity: more === null ? null : more.brakeFactor / brakeFactor - 1,
    };
    return { outputs, working, warnings: warningsOf(more, back) };
  },
});

function drumOf(given: Input): DuoServoDrum {
  return {
    ...given,
    drumRadius: given.drumDiameter / 2,
    primary: { liningStart: given.primaryStart, liningEnd: given.primaryEnd },
    secondary: { liningStart: given.secondaryStart, liningEnd: given.secondaryEnd },
  };
}

function pistonForce({ pressure, pistonDiameter }: Input): number | null {
  if (pressure === undefined || pistonDiameter === undefined) return null;
  return (pressure * Math.PI * pistonDiameter ** 2) / 4;
}

/** `null` where a shoe would lock by itself. */
function orLocked(factor: () => DuoServoFactor): DuoServoFactor | null {
  try {
    return factor();
  } catch (error) {
    if (error instanceof CalcRefusal && error.code === "SELF_LOCKING") return null;
    throw error;
  }
}

function warningsOf(more: DuoServoFactor | null, back: DuoServoFactor | null): string[] {
  return [
    ...(more === null ? ["With 10 % more friction a shoe locks by itself: this brake grabs."] : []),
    ...(back === null ? ["Backwards a shoe locks by itself."] : []),
  ];
}
