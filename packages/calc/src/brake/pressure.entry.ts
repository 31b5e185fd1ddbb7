import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { servoOf } from "./assemble";
import { boreField, pedalFields, servoFields, systemSymbols } from "./field";
import { linePressure, pistonArea, servoOutput } from "./hydraulic";
import { brakeCaution, r13, statics } from "./source";

const input = z.object({ ...pedalFields, masterBore: boreField, ...servoFields });

/** Foot force limit of the secondary brake, M1, N; a good measure of what a pedal may ask. */
const footLimit = 500;

export const brakePressureComputation = defineComputation({
  name: "brake.pressure",
  title: "Brake line pressure",
  summary: "Line pressure that a force on the pedal makes, with or without a servo.",
  input,
  outputs: {
    pressure: { label: "Line pressure", dimension: "pressure", unit: "bar" },
    withoutServo: {
      how: ["p₀", "F_p·i/A"],
      label: "Line pressure with the servo dead",
      dimension: "pressure",
      unit: "bar",
    },
    rodForce: { label: "Force at the push rod", dimension: "force", unit: "N" },
  },
  source: [statics, r13],
  validity:
    "A sound, bled system; return springs and seal friction left out. A tandem cylinder has this in both circuits.",
  caution: brakeCaution,
  example: { pedalForce: "450 N", pedalRatio: 5, masterBore: "3/4 in", servoGain: 2, servoLimit: "1500 N" },
  compute(given) {
    const servo = servoOf(given);
    const { masterBore } = given;
    const rod = given.pedalForce * given.pedalRatio;
    const rodForce = servo === undefined ? rod : servoOutput(rod, servo);
    const pressure = linePressure({ ...given, servo });
    const withoutServo = linePressure({ ...given, servo: undefined });
    const working = () => [
      ...givenSteps(input, given, { symbols: systemSymbols }),
      ...worked([
        [
          "F",
          "Force at the push rod",
          servo === undefined ? "F_p·i" : "min(g·F_p·i, F_p·i + F_s)",
          rodForce,
          "force",
          "N",
        ],
        ["A", "Area of the master cylinder", "π·d²/4", pistonArea(masterBore), "area", "mm²"],
        ["p", "Line pressure", "F/A", pressure, "pressure", "bar"],
      ]),
    ];
    const warnings =
      given.pedalForce > footLimit ? [`More than ${footLimit} N is more than many drivers can press.`] : [];
    return { outputs: { pressure, withoutServo, rodForce }, working, warnings };
  },
});
