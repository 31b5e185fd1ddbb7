import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { worked } from "../spring/worked";
import { camberOf, castorOf, inclinationOf, kingpinOf, steerOf, toeInOf } from "./axis";
import { isoSource } from "./field";

const component = (label: string) => quantity("ratio", { label, min: -1e6, max: 1e6 });
const vector = (label: string) =>
  z
    .object({
      x: component(`${label}, forwards`),
      y: component(`${label}, to the left`),
      z: component(`${label}, up`),
    })
    .meta({ title: label, description: "Direction in the car's axes; any length" });

const input = z.object({
  side: z.enum(["left", "right"]).meta({ title: "Side of the car" }),
  spinAxis: vector("Spin axis, outboard"),
  steeringAxis: vector("Steering axis, upwards").optional(),
});

/** Catalogue entry `alignment.axes`. */
export const axesComputation = defineComputation({
  name: "alignment.axes",
  title: "Angles from measured axes",
  summary:
    "Camber, toe, castor and kingpin inclination from the directions of the spin axis and the steering axis.",
  input,
  outputs: {
    camber: { label: "Camber", dimension: "angle", unit: "°", decimals: 3 },
    toeIn: { label: "Toe-in of this wheel", dimension: "angle", unit: "'", decimals: 2 },
    castor: { label: "Castor", dimension: "angle", unit: "°", decimals: 3 },
    kingpin: { label: "Kingpin inclination", dimension: "angle", unit: "°", decimals: 3 },
    inclination: {
      how: ["ε_W", "−s·γ, s = 1 left, −1 right"],
      label: "Inclination angle, ISO 8855 (to the right)",
      dimension: "angle",
      unit: "°",
      decimals: 3,
    },
    steer: {
      how: ["δ", "−s·θ, s as above"],
      label: "Steer angle, ISO 8855 (to the left)",
      dimension: "angle",
      unit: "°",
      decimals: 3,
    },
  },
  source: [isoSource],
  validity:
    "Axes of ISO 8855: x forwards, y left, z up. Exact. Trade signs are alike on both sides, the two ISO angles are not.",
  example: {
    side: "left",
    spinAxis: { x: 0.003, y: 1, z: 0.009 },
    steeringAxis: { x: -0.09, y: -0.16, z: 1 },
  },
  compute({ side, spinAxis, steeringAxis }) {
    const camber = camberOf(spinAxis);
    const toeIn = toeInOf(spinAxis, side);
    const castor = steeringAxis === undefined ? null : castorOf(steeringAxis);
    const kingpin = steeringAxis === undefined ? null : kingpinOf(steeringAxis, side);
    const inclination = inclinationOf(camber, side);
    const steer = steerOf(toeIn, side);
    return {
      outputs: { camber, toeIn, castor, kingpin, inclination, steer },
      working: () =>
        worked([
          ["γ", "Camber", "−asin(n_z)", camber, "angle", "°", "top out is positive"],
          ["θ", "Toe-in", "atan2(n_x, s·n_y)", toeIn, "angle", "'", "s is +1 left, −1 right"],
          ["τ", "Castor", "atan2(−k_x, k_z)", castor, "angle", "°", "top rearwards is positive"],
          [
            "σ",
            "Kingpin inclination",
            "atan2(−s·k_y, k_z)",
            kingpin,
            "angle",
            "°",
            "top inboard is positive",
          ],
        ]),
      warnings:
        steeringAxis === undefined
          ? ["No steering axis is given, so castor and kingpin inclination have no value."]
          : [],
    };
  },
});
