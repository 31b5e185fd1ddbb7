import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { ackermannOuter, ackermannRatio, ackermannSteer, turnRadius } from "./ackermann";
import { geometrySource, isoSource } from "./field";
import { castorFromSwing, steeringAxisFromSwing } from "./swing";

const below90 = { above: 0, below: Math.PI / 2, unit: "°" } as const;
const ackermannInput = z.object({
  inner: quantity("angle", { label: "Angle of the inner wheel", ...below90 }),
  outer: quantity("angle", {
    label: "Angle of the outer wheel, as measured",
    help: "Left out, only the ideal is told",
    min: 0,
    below: Math.PI / 2,
    unit: "°",
  }).optional(),
  wheelbase: quantity("length", { label: "Wheelbase", above: 0, max: 10, unit: "mm" }),
  kingpinTrack: quantity("length", {
    label: "Distance between the steering axes at the ground",
    help: "Track less both scrub radii",
    above: 0,
    max: 5,
    unit: "mm",
  }),
});

/** Catalogue entry `alignment.ackermann`. */
export const ackermannComputation = defineComputation({
  name: "alignment.ackermann",
  title: "Ackermann steering",
  summary:
    "The outer wheel's ideal angle for an inner one, how near the car comes to it, and the turn it makes.",
  input: ackermannInput,
  outputs: {
    idealOuter: { label: "Ideal angle of the outer wheel", dimension: "angle", unit: "°", decimals: 2 },
    ratio: { label: "Ackermann (1 ideal, 0 parallel)", dimension: "ratio", decimals: 3 },
    radius: { label: "Turn radius, middle of the rear axle", dimension: "length", unit: "m", decimals: 2 },
    steer: { label: "Steer angle of the turn", dimension: "angle", unit: "°", decimals: 2 },
  },
  source: [
    { ...isoSource, locus: "7.1.9", status: "read-formula" },
    { title: "Engineering exam bank: fundamental steering equation", status: "read-formula" },
  ],
  validity:
    "Slow turns without slip. The ratio compares the difference of the two angles with the ideal one; other definitions give other figures.",
  example: { inner: "30°", outer: "26°", wheelbase: "2400 mm", kingpinTrack: "1300 mm" },
  compute(given) {
    const { inner, outer, wheelbase, kingpinTrack } = given;
    const plan = { wheelbase, kingpinTrack };
    const idealOuter = ackermannOuter(inner, plan);
    const ratio = outer === undefined ? null : ackermannRatio(inner, outer, plan);
    const radius = turnRadius(inner, plan);
    const steer = ackermannSteer(wheelbase, radius);
    const symbols = { inner: "δ_i", outer: "δ_o", wheelbase: "L", kingpinTrack: "w" };
    return {
      outputs: { idealOuter, ratio, radius, steer },
      working: () => [
        ...givenSteps(ackermannInput, given, { symbols }),
        ...worked([
          ["δ_a", "Ideal outer angle", "cot δ_a = cot δ_i + w/L", idealOuter, "angle", "°"],
          ["A", "Ackermann", "(δ_i − δ_o)/(δ_i − δ_a)", ratio, "ratio"],
          ["R", "Turn radius", "L/tan δ_i + w/2", radius, "length", "m"],
          ["δ", "Steer angle of the turn", "atan(L/R)", steer, "angle", "°"],
        ]),
      ],
      warnings:
        outer === undefined
          ? ["The outer wheel's angle is not given, so nothing is said of the car's own Ackermann."]
          : [],
    };
  },
});

const camberField = (label: string) =>
  quantity("angle", { label, min: -Math.PI / 4, max: Math.PI / 4, unit: "°" });
const swingInput = z.object({
  outward: camberField("Camber with the wheel steered outwards"),
  inward: camberField("Camber with the wheel steered inwards"),
  straight: camberField("Camber straight ahead").optional(),
  steer: quantity("angle", { label: "Turntable reading either way", ...below90 }),
});

/** Catalogue entry `alignment.castorSwing`. */
export const castorSwingComputation = defineComputation({
  name: "alignment.castorSwing",
  title: "Castor from camber at both locks",
  summary: "Castor by the gauge's formula, and castor and kingpin inclination exactly.",
  input: swingInput,
  outputs: {
    gaugeCastor: { label: "Castor by the gauge's formula", dimension: "angle", unit: "°", decimals: 2 },
    castor: { label: "Castor, exact", dimension: "angle", unit: "°", decimals: 2 },
    kingpin: { label: "Kingpin inclination, exact", dimension: "angle", unit: "°", decimals: 2 },
  },
  source: [geometrySource],
  validity:
    "Brakes held so that the wheel does not roll, toe straight ahead small, equal readings either way. Kingpin from this is sensitive: 0.1° in one reading moves it by up to 1.6° at ±20°.",
  example: { outward: "2.331°", inward: "-1.103°", straight: "0°", steer: "20°" },
  compute(given) {
    const { straight } = given;
    const gaugeCastor = castorFromSwing(given);
    const exact = straight === undefined ? null : steeringAxisFromSwing({ ...given, straight });
    const outputs = { gaugeCastor, castor: exact?.castor ?? null, kingpin: exact?.kingpin ?? null };
    return {
      outputs,
      working: () => [
        ...givenSteps(swingInput, given, {
          symbols: { outward: "γ_o", inward: "γ_i", straight: "γ_0", steer: "δ" },
        }),
        ...worked([
          ["τ_g", "Castor by the gauge's formula", "(γ_o − γ_i)/(2 sin δ)", gaugeCastor, "angle", "°"],
          ["τ", "Castor", "axis square to both changes of the spin axis", outputs.castor, "angle", "°"],
          [
            "σ",
            "Kingpin inclination",
            "axis square to both changes of the spin axis",
            outputs.kingpin,
            "angle",
            "°",
          ],
        ]),
      ],
      warnings:
        straight === undefined
          ? ["Camber straight ahead is not given, so only the gauge's formula is worked."]
          : [],
    };
  },
});
