import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { withDefault } from "./default";
import {
  brakingEnergy,
  heatPerBrake,
  seriesTemperatures,
  settledTemperature,
  stopLimit,
  temperatureRise,
} from "./heat";
import { brakeCaution, energyBalance, shopRule } from "./source";

const temperature = (label: string) =>
  quantity("temperature", { label, min: 223.15, max: 1273.15, unit: "°C" });
const input = z.object({
  mass: quantity("mass", { label: "Mass of the car", help: "As driven", above: 0, max: 5000 }),
  fromSpeed: quantity("speed", { label: "Speed before", above: 0, max: 120, unit: "km/h" }),
  toSpeed: withDefault(quantity("speed", { label: "Speed after", min: 0, max: 120, unit: "km/h" }), "0 km/h"),
  axleShare: quantity("ratio", {
    label: "Share of the braking by this axle",
    help: "Front of a light sports car about 65 to 75 %",
    above: 0,
    max: 1,
    unit: "%",
  }),
  ironMass: quantity("mass", {
    label: "Mass of one disc's rim or of one drum",
    help: "The part the pads rub on, without the bell",
    above: 0,
    max: 30,
  }),
  specificHeat: withDefault(
    quantity("specificHeat", {
      label: "Specific heat",
      help: "Grey iron 450 to 500",
      above: 0,
    }),
    "450 J/(kg·K)",
  ),
  shareToIron: withDefault(
    quantity("ratio", {
      label: "Share of the heat that goes into the iron",
      help: "100 % is the safe side; pads take some 5 %",
      above: 0,
      max: 1,
      unit: "%",
    }),
    "100 %",
  ),
  count: withDefault(quantity("count", { label: "Stops", min: 1, max: stopLimit }), 1),
  interval: withDefault(quantity("time", { label: "From one stop to the next", min: 0, max: 3600 }), "0 s"),
  coolingTime: quantity("time", {
    label: "Cooling time constant",
    help: "Time in which the excess falls to 37 %; a solid disc at speed 150 to 300 s. Left out, nothing cools",
    above: 0,
    max: 7200,
  }).optional(),
  ambient: withDefault(temperature("Air temperature"), "20 °C"),
  start: temperature("Temperature before the first stop").optional(),
});

export const brakeTemperatureComputation = defineComputation({
  name: "brake.temperature",
  title: "Brake temperature after stops",
  summary: "Mean temperature of a disc or drum right after one stop and after a series of them.",
  input,
  outputs: {
    rise: { label: "Rise per stop", dimension: "temperatureDifference", unit: "K" },
    afterFirst: {
      how: ["T₁", "T_a + ΔT"],
      label: "Right after the first stop",
      dimension: "temperature",
      unit: "°C",
      decimals: 0,
    },
    afterLast: { label: "Right after the last stop", dimension: "temperature", unit: "°C", decimals: 0 },
    settled: {
      how: ["T_∞", "T_a + ΔT/(1 − e^(−t/τ))"],
      label: "Tends to, with endless stops",
      dimension: "temperature",
      unit: "°C",
      decimals: 0,
    },
    energy: { label: "Energy of one stop, whole car", dimension: "energy", unit: "kJ" },
  },
  source: [energyBalance, shopRule],
  validity:
    "Mean temperature of the iron; its rubbed surface is hotter for moments. Heat is taken up in the stop, lost between stops in proportion to the excess. Engine braking, drag and slopes are left out. Good to about 600 °C.",
  caution: brakeCaution,
  example: {
    mass: "980 kg",
    fromSpeed: "60 km/h",
    axleShare: "70 %",
    ironMass: "4.5 kg",
    count: 15,
    interval: "25 s",
    coolingTime: "200 s",
  },
  compute(given) {
    const { mass, fromSpeed, toSpeed, axleShare, shareToIron, ironMass, specificHeat } = given;
    const energy = brakingEnergy(mass, { fromSpeed, toSpeed });
    const heat = heatPerBrake(energy, axleShare, shareToIron);
    const rise = temperatureRise(heat, { mass: ironMass, specificHeat });
    const series = { ...given, rise };
    const temperatures = seriesTemperatures(series);
    const [afterFirst = Number.NaN] = temperatures;
    const afterLast = temperatures.at(-1) ?? Number.NaN;
    const settled = settledTemperature(series) ?? null;
    const working = () => [
      ...givenSteps(input, given, { symbols }),
      ...worked([
        ["E", "Energy of one stop", "½·m·(v₁² − v₂²)", energy, "energy", "kJ"],
        ["Q", "Heat into one brake", "E·φ·η/2", heat, "energy", "kJ"],
        ["ΔT", "Rise per stop", "Q/(m_d·c)", rise, "temperatureDifference", "K"],
        [
          "T_n",
          "Right after the last stop",
          "T_a + (T_{n−1} − T_a)·e^(−t/τ) + ΔT",
          afterLast,
          "temperature",
          "°C",
          peak,
        ],
        ["T_∞", "Tends to", "T_a + ΔT/(1 − e^(−t/τ))", settled, "temperature", "°C"],
      ]),
      ...(given.coolingTime === undefined
        ? [{ symbol: "τ", label: "Cooling time constant", value: "not given: nothing cools between stops" }]
        : []),
    ];
    return {
      outputs: { rise, afterFirst, afterLast, settled, energy },
      working,
      warnings: warningsOf(afterLast),
    };
  },
});

const peak = "Convention: the peak right after each stop.";
const symbols = {
  mass: "m",
  fromSpeed: "v₁",
  toSpeed: "v₂",
  axleShare: "φ",
  ironMass: "m_d",
  specificHeat: "c",
  shareToIron: "η",
  count: "n",
  interval: "t",
  coolingTime: "τ",
  ambient: "T_a",
  start: "T₀",
};

function warningsOf(last: number): string[] {
  const celsius = last - 273.15;
  if (celsius > 600)
    return [
      `${celsius.toFixed(0)} °C: outside the range of this computation, and of ordinary discs and pads.`,
    ];
  if (celsius > 350)
    return [`${celsius.toFixed(0)} °C: ordinary road pads fade and old fluid boils (common practice).`];
  return [];
}
