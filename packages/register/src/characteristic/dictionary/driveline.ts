import type { Characteristic } from "../characteristic";
import { choice, count, gearRatio, part, removablePart, text } from "./preset";

const item = { ...part, assembly: "driveline" } as const;

const gears = [
  ["first", "First"],
  ["second", "Second"],
  ["third", "Third"],
  ["fourth", "Fourth"],
  ["fifth", "Fifth"],
] as const;

const gearRatios = gears.map(
  ([gear, name]): Characteristic => ({
    ...(gear === "fifth" ? removablePart : part),
    ...gearRatio,
    assembly: "driveline",
    key: `driveline.ratio.${gear}`,
    label: `${name} gear ratio`,
    also: [`${name} gear`],
    minimum: 0.5,
    maximum: 6,
    help:
      gear === "fifth"
        ? "Turns of the engine per turn of the propeller shaft. Say not fitted for a four-speed gearbox."
        : "Turns of the engine per turn of the propeller shaft.",
  }),
);

/** Driveline: gearbox, ratios, final drive, speedometer drive. */
export const driveline: readonly Characteristic[] = [
  {
    ...item,
    ...text,
    key: "driveline.gearbox.source",
    label: "Gearbox",
    also: ["Gearbox source", "Transmission"],
    help: "Type, donor and casting number.",
  },
  ...gearRatios,
  {
    ...removablePart,
    ...gearRatio,
    assembly: "driveline",
    key: "driveline.ratio.overdrive",
    label: "Overdrive ratio",
    also: ["Overdrive"],
    minimum: 0.6,
    maximum: 1,
    help: "Turns into the overdrive per turn out of it, below 1. Say not fitted where there is none.",
  },
  {
    ...item,
    ...gearRatio,
    key: "driveline.finalDrive.ratio",
    label: "Final drive ratio",
    also: ["Final drive", "Axle ratio", "Diff ratio"],
    minimum: 2,
    maximum: 7,
    help: "Turns of the propeller shaft per turn of the wheels: teeth of the crown wheel over teeth of the pinion.",
  },
  {
    ...item,
    ...choice(
      { code: "open", label: "Open", also: ["standard", "free"] },
      { code: "plate", label: "Limited slip, plates", also: ["limited slip", "LSD", "plate LSD"] },
      { code: "gear", label: "Limited slip, gears", also: ["helical", "torque biasing"] },
      { code: "locked", label: "Locked", also: ["welded", "spool"] },
    ),
    key: "driveline.differential",
    label: "Differential",
    also: ["Diff"],
    help: "What shares the torque between the driven wheels.",
  },
  {
    ...item,
    ...count,
    key: "driveline.speedometer.turnsPerMile",
    label: "Speedometer turns per mile",
    also: ["Speedometer constant", "TPM"],
    minimum: 300,
    maximum: 3000,
    help: "Turns of the cable per mile, as printed on the dial; a dial in kilometres gives turns per kilometre: times 1.609.",
  },
];
