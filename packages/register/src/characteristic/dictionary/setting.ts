import type { Characteristic } from "../characteristic";
import { angle, degree, length, mass, pressure, ratio, setting, sidedSetting } from "./preset";
import type { Axle } from "./suspension";

const item = { ...sidedSetting, assembly: "settings" } as const;

function cornersOf(axle: Axle): readonly Characteristic[] {
  const name = axle === "front" ? "Front" : "Rear";
  return [
    {
      ...item,
      ...angle,
      key: `${axle}.camber`,
      label: `${name} camber`,
      minimum: -8 * degree,
      maximum: 8 * degree,
      help: "Lean of the wheel seen from ahead, negative with the top leaning in. Car level, settled, at ride height.",
    },
    {
      ...item,
      ...angle,
      units: { metric: "'", imperial: "'" },
      notation: "toe",
      key: `${axle}.toe`,
      label: `${name} toe`,
      also: [`${name} toe-in`, `${name} tracking`],
      minimum: -3 * degree,
      maximum: 3 * degree,
      help: "Toe-in of each wheel, toe-out negative. Say whether a figure is per side or total; a distance needs the rim it was measured at.",
    },
    {
      ...item,
      ...length,
      key: `${axle}.rideHeight`,
      label: `${name} ride height`,
      minimum: 0.04,
      maximum: 0.6,
      help: "From the ground to the series' datum point at this corner, driver aboard or as the load state of the sheet says.",
    },
    {
      ...item,
      ...pressure,
      key: `tyres.${axle}.pressure`,
      label: `${name} tyre pressure`,
      also: [`${name} pressure`, `${name} pressures`, `${name} tyre pressures`],
      minimum: 50_000,
      maximum: 500_000,
      help: "Gauge pressure, cold.",
    },
    {
      ...item,
      ...mass,
      key: `${axle}.cornerWeight`,
      label: `${name} corner weight`,
      minimum: 50,
      maximum: 800,
      help: "What the scale under this wheel shows, as mass; load state as the sheet says, anti-roll bars disconnected.",
    },
  ];
}

/** What is set and measured at the corners, and brake bias. Damper clicks and bar positions stand with their parts. */
export const settings: readonly Characteristic[] = [
  ...cornersOf("front"),
  {
    ...item,
    ...angle,
    key: "front.castor",
    label: "Front castor",
    also: ["Castor", "Caster"],
    minimum: -5 * degree,
    maximum: 15 * degree,
    help: "Lean of the steering axis seen from the side, positive with the top rearwards.",
  },
  {
    ...item,
    ...angle,
    key: "front.kingpinInclination",
    label: "Front kingpin inclination",
    also: ["Kingpin inclination", "KPI", "Steering axis inclination"],
    minimum: -5 * degree,
    maximum: 25 * degree,
    help: "Lean of the steering axis seen from ahead, positive with the top inboard.",
  },
  ...cornersOf("rear"),
  {
    ...setting,
    ...ratio,
    units: { metric: "%", imperial: "%" },
    assembly: "settings",
    key: "brakes.bias",
    label: "Brake bias",
    also: ["Front brake bias", "Brake balance"],
    minimum: 0.3,
    maximum: 0.95,
    help: "Front share of the brake force, as set on the balance bar or the valve and measured at the calipers.",
  },
];
