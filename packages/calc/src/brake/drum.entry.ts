import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { drumBrakeFactor, shoeFactor } from "./drum";
import { brakeCaution, shigleyShoe } from "./source";

const input = z.object({
  arrangement: z.enum(["simplex", "duplex"]).meta({
    title: "Arrangement",
    description: "simplex: one leading, one trailing shoe; duplex: two leading shoes",
  }),
  friction: quantity("ratio", { label: "Friction of the lining", help: "0.3 to 0.4", above: 0, max: 1 }),
  drumDiameter: quantity("length", { label: "Drum diameter", above: 0, max: 0.5, unit: "mm" }),
  pinDistance: quantity("length", {
    label: "Drum centre to the shoe's pivot",
    above: 0,
    max: 0.25,
    unit: "mm",
  }),
  tipArm: quantity("length", {
    label: "Pivot to the line of the cylinder's force",
    above: 0,
    max: 0.5,
    unit: "mm",
  }),
  liningStart: quantity("angle", {
    label: "Lining begins, from the pivot",
    min: 0,
    below: Math.PI,
    unit: "°",
  }),
  liningEnd: quantity("angle", { label: "Lining ends, from the pivot", above: 0, below: Math.PI, unit: "°" }),
  pistonDiameter: quantity("length", {
    label: "Piston diameter at one shoe",
    above: 0,
    max: 0.06,
    unit: "mm",
  }).optional(),
  pressure: quantity("pressure", { label: "Line pressure", min: 0, max: 2e7, unit: "bar" }).optional(),
});
const symbols = {
  friction: "μ",
  drumDiameter: "D",
  pinDistance: "a",
  tipArm: "c",
  liningStart: "θ₁",
  liningEnd: "θ₂",
  pistonDiameter: "d",
  pressure: "p",
};

export const drumFactorComputation = defineComputation({
  name: "brake.drumFactor",
  title: "Brake factor and torque of a drum brake",
  summary: "How much a drum brake with pivoted shoes multiplies the force of its cylinder, and its torque.",
  input,
  outputs: {
    brakeFactor: { label: "Brake factor C*", dimension: "ratio" },
    leading: { label: "Leading shoe", dimension: "ratio" },
    trailing: { label: "Trailing shoe", dimension: "ratio" },
    torque: { label: "Torque of one drum", dimension: "torque", unit: "N·m" },
    sensitivity: {
      how: ["ΔC*", "factor worked anew at 1.1 times the friction, less C*, over C*"],
      label: "Change of the factor for 10 % more friction",
      dimension: "ratio",
      unit: "%",
    },
  },
  source: [shigleyShoe],
  validity:
    "Two like shoes on fixed pivots, bedded in. Shoes that float against an abutment give a little more; duo-servo brakes far more: see brake.duoServo.",
  caution: brakeCaution,
  example: {
    arrangement: "simplex",
    friction: 0.35,
    drumDiameter: "8 in",
    pinDistance: "80 mm",
    tipArm: "160 mm",
    liningStart: "20°",
    liningEnd: "130°",
    pistonDiameter: "0.7 in",
    pressure: "40 bar",
  },
  compute(given) {
    const shoe = { ...given, drumRadius: given.drumDiameter / 2 };
    const brakeFactor = drumBrakeFactor(given.arrangement, given.friction, shoe);
    const more = moreFriction(() => drumBrakeFactor(given.arrangement, 1.1 * given.friction, shoe));
    const leading = shoeFactor("leading", given.friction, shoe);
    const trailing = shoeFactor("trailing", given.friction, shoe);
    const { pressure, pistonDiameter } = given;
    const force =
      pressure === undefined || pistonDiameter === undefined
        ? null
        : (pressure * Math.PI * pistonDiameter ** 2) / 4;
    const torque = force === null ? null : brakeFactor * force * shoe.drumRadius;
    const working = () => [
      ...givenSteps(input, given, { symbols }),
      ...worked([
        ["S₁", "Leading shoe", "μ·c·(cos θ₁ − cos θ₂)/(M_N − M_f)", leading, "ratio"],
        ["S₂", "Trailing shoe", "μ·c·(cos θ₁ − cos θ₂)/(M_N + M_f)", trailing, "ratio"],
        ["C*", "Brake factor", given.arrangement === "simplex" ? "S₁ + S₂" : "2·S₁", brakeFactor, "ratio"],
        ["F", "Force at each shoe", "p·π·d²/4", force, "force", "N"],
        ["T", "Torque", "C*·F·D/2", torque, "torque", "N·m"],
      ]),
    ];
    const outputs = {
      brakeFactor,
      leading,
      trailing,
      torque,
      sensitivity: more === null ? null : more / brakeFactor - 1,
    };
    const warnings =
      more === null ? ["With 10 % more friction a shoe locks by itself: this brake grabs."] : [];
    return { outputs, working, warnings };
  },
});

/** `null` where the shoe would lock by itself. */
function moreFriction(factor: () => number): number | null {
  try {
    return factor();
  } catch {
    return null;
  }
}
