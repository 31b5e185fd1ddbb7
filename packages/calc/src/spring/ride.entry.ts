import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { motionRatioField, ratioWarnings, springRateField, sprungMassField, tyreRateField } from "./field";
import { givenSteps } from "./given";
import { naturalFrequency, rideRate, staticDeflection, wheelHopFrequency, wheelRate } from "./wheel";
import { worked } from "./worked";

const input = z.object({
  springRate: springRateField,
  motionRatio: motionRatioField,
  motionRatioChange: quantity("ratio", {
    label: "Change of the motion ratio per metre of bump",
    help: "In 1/m; left out, the ratio is constant",
    min: -20,
    max: 20,
  }).optional(),
  springForce: quantity("force", {
    label: "Force in the spring at rest",
    help: "Needed with a changing motion ratio",
    min: 0,
    unit: "N",
  }).optional(),
  sprungMass: sprungMassField.optional(),
  tyreRate: tyreRateField.optional(),
  unsprungMass: quantity("mass", {
    label: "Unsprung mass of this wheel",
    above: 0,
    max: 500,
    unit: "kg",
  }).optional(),
});

export const springRideComputation = defineComputation({
  name: "spring.ride",
  title: "Wheel rate and ride frequency",
  summary: "What a spring is at the wheel, with the tyre under it, and how fast the body bounces on it.",
  input,
  outputs: {
    wheelRate: { label: "Wheel rate", dimension: "rate", unit: "N/mm" },
    rideRate: { label: "Ride rate, with the tyre in series", dimension: "rate", unit: "N/mm" },
    frequency: { label: "Ride frequency", dimension: "frequency", unit: "Hz", decimals: 2 },
    deflection: { label: "Static deflection at the wheel", dimension: "length", unit: "mm" },
    hopFrequency: { label: "Wheel-hop frequency", dimension: "frequency", unit: "Hz", decimals: 1 },
  },
  source: [
    { title: "Virtual work: F_wheel = F_spring·ds/dz, differentiated", status: "common practice, no source" },
    { title: "Natural frequency of a mass on a spring", locus: "√(k/m)/2π", status: "memory" },
  ],
  validity:
    "One corner by itself, undamped, linear spring and tyre. Anti-roll bar, bush rates and the other axle are left out.",
  example: {
    springRate: "28 N/mm",
    motionRatio: 0.72,
    sprungMass: "185 kg",
    tyreRate: "180 N/mm",
    unsprungMass: "28 kg",
  },
  compute(given) {
    const { motionRatio, sprungMass, tyreRate, unsprungMass } = given;
    const atWheel = wheelRate(given.springRate, given);
    const ride = rideRate(atWheel, tyreRate);
    const frequency = sprungMass === undefined ? null : naturalFrequency(ride, sprungMass);
    const deflection = sprungMass === undefined ? null : staticDeflection(ride, sprungMass);
    const hopFrequency =
      tyreRate === undefined || unsprungMass === undefined
        ? null
        : wheelHopFrequency({ wheelRate: atWheel, tyreRate, unsprungMass });
    const working = () => [
      ...givenSteps(input, given, {
        symbols: {
          springRate: "k",
          motionRatio: "MR",
          motionRatioChange: "MR′",
          springForce: "F",
          sprungMass: "m",
          tyreRate: "k_t",
          unsprungMass: "m_u",
        },
      }),
      ...(tyreRate === undefined
        ? [{ symbol: "k_t", label: "Vertical rate of the tyre", value: "not given: taken as rigid" }]
        : []),
      ...worked([
        ["k_w", "Wheel rate", "k·MR² + F·MR′", atWheel, "rate", "N/mm"],
        ["k_r", "Ride rate", "1/(1/k_w + 1/k_t)", ride, "rate", "N/mm"],
        ["f", "Ride frequency", "√(k_r/m)/2π", frequency, "frequency", "Hz"],
        ["δ", "Static deflection", "m·g/k_r", deflection, "length", "mm"],
        ["f_u", "Wheel-hop frequency", "√((k_w + k_t)/m_u)/2π", hopFrequency, "frequency", "Hz"],
      ]),
    ];
    return {
      outputs: { wheelRate: atWheel, rideRate: ride, frequency, deflection, hopFrequency },
      working,
      warnings: ratioWarnings(motionRatio),
    };
  },
});
