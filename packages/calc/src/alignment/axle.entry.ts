import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { setBack, thrustAngle, totalToe } from "./axle-line";
import { geometrySource, isoSource, toe } from "./field";

const thrustInput = z.object({
  leftToeIn: toe({ label: "Toe of the left wheel", help: "Say per side" }),
  rightToeIn: toe({ label: "Toe of the right wheel", help: "Say per side" }),
});

/** Catalogue entry `alignment.thrust`. */
export const thrustComputation = defineComputation({
  name: "alignment.thrust",
  title: "Total toe and thrust angle",
  summary: "Total toe of an axle and the direction in which its two wheels point together.",
  input: thrustInput,
  outputs: {
    totalToe: { label: "Total toe-in", dimension: "angle", unit: "'", decimals: 2 },
    thrust: { label: "Thrust angle, positive to the right", dimension: "angle", unit: "'", decimals: 2 },
  },
  source: [{ ...isoSource, locus: "7.1.7 (total toe)", status: "read" }, geometrySource],
  validity:
    "Both angles against the same line, the car's centre line. Gauges differ in the sign of the thrust angle.",
  example: { leftToeIn: "0°12' toe-in per side", rightToeIn: "0°4' toe-in per side" },
  compute(given) {
    const wheels = { left: given.leftToeIn, right: given.rightToeIn };
    const outputs = { totalToe: totalToe(wheels), thrust: thrustAngle(wheels) };
    return {
      outputs,
      working: () => [
        ...givenSteps(thrustInput, given, { symbols: { leftToeIn: "θ_l", rightToeIn: "θ_r" } }),
        ...worked([
          ["θ", "Total toe-in", "θ_l + θ_r", outputs.totalToe, "angle", "'"],
          [
            "β",
            "Thrust angle",
            "(θ_l − θ_r)/2",
            outputs.thrust,
            "angle",
            "'",
            "the bisector of both headings",
          ],
        ]),
      ],
      warnings: [],
    };
  },
});

const setBackInput = z.object({
  leftWheelbase: quantity("length", { label: "Wheelbase on the left", above: 0, max: 10, unit: "mm" }),
  rightWheelbase: quantity("length", { label: "Wheelbase on the right", above: 0, max: 10, unit: "mm" }),
  track: quantity("length", {
    label: "Track",
    help: "Between the wheel centres",
    above: 0,
    max: 5,
    unit: "mm",
  }),
});

/** Catalogue entry `alignment.setBack`. */
export const setBackComputation = defineComputation({
  name: "alignment.setBack",
  title: "Set-back",
  summary: "How far one front wheel stands behind the other, as a distance and an angle.",
  input: setBackInput,
  outputs: {
    distance: { label: "Right wheel behind the left", dimension: "length", unit: "mm", decimals: 1 },
    angle: { label: "Set-back angle", dimension: "angle", unit: "'", decimals: 2 },
  },
  source: [geometrySource],
  validity:
    "Wheelbases measured from a rear axle that stands square to the car. Positive with the right wheel behind.",
  example: { leftWheelbase: "2304 mm", rightWheelbase: "2298 mm", track: "1285 mm" },
  compute(given) {
    const half = given.track / 2;
    const back = setBack(
      { x: given.leftWheelbase, y: half, z: 0 },
      { x: given.rightWheelbase, y: -half, z: 0 },
    );
    return {
      outputs: { distance: back.distance, angle: back.angle },
      working: () => [
        ...givenSteps(setBackInput, given, {
          symbols: { leftWheelbase: "L_l", rightWheelbase: "L_r", track: "t" },
        }),
        ...worked([
          ["s", "Set-back", "L_l − L_r", back.distance, "length", "mm"],
          ["σ", "Set-back angle", "atan(s/t)", back.angle, "angle", "'"],
        ]),
      ],
      warnings: [],
    };
  },
});
