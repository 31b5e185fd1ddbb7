import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { effectiveRadiusOf, pistonsArea } from "./assemble";
import { discTorque, evenPressureRadius } from "./disc";
import { axleSymbols, discFields, thresholdField, tyreRadiusField } from "./field";
import { brakeCaution, statics } from "./source";

const input = z.object({
  pressure: quantity("pressure", { label: "Line pressure", min: 0, max: 2e7, unit: "bar" }),
  ...discFields,
  thresholdPressure: thresholdField,
  tyreRadius: tyreRadiusField.optional(),
});

export const discTorqueComputation = defineComputation({
  name: "brake.discTorque",
  title: "Torque of a disc brake",
  summary: "Torque of one disc, and its force at the road, from line pressure, pistons, pads and disc.",
  input,
  outputs: {
    torque: { label: "Torque of one wheel", dimension: "torque", unit: "N·m" },
    clampForce: { label: "Force on each pad", dimension: "force", unit: "kN" },
    roadForce: { label: "Force at the road, one wheel", dimension: "force", unit: "N" },
    effectiveRadius: { label: "Effective radius", dimension: "length", unit: "mm" },
  },
  source: [statics],
  validity:
    "Pads bedded in and within their range of temperature; friction varies by a tenth or more from set to set.",
  caution: brakeCaution,
  example: {
    pressure: "70 bar",
    pistonDiameters: ["54 mm"],
    friction: 0.38,
    discDiameter: "10 1/2 in",
    padHeight: "45 mm",
    tyreRadius: "290 mm",
  },
  compute(given) {
    const area = pistonsArea(given.pistonDiameters);
    const effectiveRadius = effectiveRadiusOf(given);
    const { friction, thresholdPressure, tyreRadius } = given;
    const torque = discTorque(given.pressure, {
      pistonArea: area,
      friction,
      effectiveRadius,
      thresholdPressure,
    });
    const clampForce = torque / (2 * friction * effectiveRadius);
    const roadForce = tyreRadius === undefined ? null : torque / tyreRadius;
    const { discDiameter, padHeight } = given;
    const even =
      discDiameter === undefined || padHeight === undefined
        ? null
        : evenPressureRadius(discDiameter / 2, padHeight);
    const working = () => [
      ...givenSteps(input, given, { symbols: { ...axleSymbols, pressure: "p" } }),
      ...worked([
        ["A", "Pistons of one side", "Σπ·d²/4", area, "area", "mm²", oneSide],
        ["r_e", "Effective radius", even === null ? "given" : "D/2 − h_p/2", effectiveRadius, "length", "mm"],
        ["r_p", "… were the pad pressed evenly", "2/3·(R³ − r³)/(R² − r²)", even, "length", "mm"],
        ["F", "Force on each pad", "(p − p₀)·A", clampForce, "force", "kN"],
        ["T", "Torque", "2·μ·F·r_e", torque, "torque", "N·m"],
        ["B", "Force at the road", "T/r_t", roadForce, "force", "N"],
      ]),
    ];
    return { outputs: { torque, clampForce, roadForce, effectiveRadius }, working, warnings: [] };
  },
});

const oneSide =
  "Convention: piston area is that of one side of the disc; the 2 in the torque is for the two faces. Others quote the area of both sides and leave out the 2.";
