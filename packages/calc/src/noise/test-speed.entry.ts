import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { givenSteps } from "../spring/given";
import { worked } from "../spring/worked";
import { noiseCaution } from "./field";
import { stationaryTestSpeed } from "./test-speed";

const input = z.object({
  ratedSpeed: quantity("angularSpeed", {
    label: "Rated engine speed",
    help: "At which it gives its greatest power",
    above: 0,
    max: 2500,
    unit: "rev/min",
  }),
});
const speed = (label: string) =>
  ({ label, dimension: "angularSpeed", unit: "rev/min", decimals: 0 }) as const;

export const noiseTestSpeedComputation = defineComputation({
  name: "noise.testSpeed",
  title: "Engine speed for a static noise test",
  summary: "At which engine speed the exhaust noise of a standing car is measured.",
  input,
  outputs: {
    stationary: speed("ISO 5130 / UN R51"),
    threeQuarters: speed("Three quarters, as some national rules have it"),
    twoThirds: speed("Two thirds, as others have it"),
  },
  source: [
    { title: "ISO 5130:2007 + A1:2012; UN R51 Annex 3", locus: "stationary test", status: "memory" },
    {
      title: "National competition rules and individual approval, 2/3 to 3/4 of maximum speed",
      status: "read",
    },
  ],
  validity:
    "Piston engines that reach the speed standing. The rule in force says which speed, and of which maximum.",
  caution: `Nobody stands in line with the wheels or the engine. ${noiseCaution}`,
  example: { ratedSpeed: "6000 rev/min" },
  compute(given) {
    const { ratedSpeed } = given;
    const outputs = {
      stationary: stationaryTestSpeed(ratedSpeed),
      threeQuarters: 0.75 * ratedSpeed,
      twoThirds: (2 / 3) * ratedSpeed,
    };
    const formula = "0.75·S up to 5000 rev/min; 3750; 0.5·S from 7500";
    const working = () => [
      ...givenSteps(input, given, { symbols: { ratedSpeed: "S" } }),
      ...worked([
        ["n", "ISO 5130 / UN R51", formula, outputs.stationary, "angularSpeed", "rev/min"],
        ["n_34", "Three quarters", "0.75·S", outputs.threeQuarters, "angularSpeed", "rev/min"],
        ["n_23", "Two thirds", "2·S/3", outputs.twoThirds, "angularSpeed", "rev/min"],
      ]),
    ];
    return { outputs, working, warnings: [] };
  },
});
