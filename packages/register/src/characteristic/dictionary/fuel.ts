import type { Characteristic } from "../characteristic";
import { choice, part } from "./preset";

const item = { ...part, assembly: "fuel" } as const;

/** Fuel: tank, pump, lines, cut-off. */
export const fuel: readonly Characteristic[] = [
  {
    ...item,
    ...choice(
      { code: "steel", label: "Steel", also: ["steel tank", "standard"] },
      { code: "aluminium", label: "Aluminium", also: ["alloy", "alloy tank"] },
      { code: "plastic", label: "Plastic", also: ["polyethylene"] },
      { code: "bag", label: "Bag tank", also: ["fuel cell", "safety cell", "bladder"] },
    ),
    key: "fuel.tank.kind",
    label: "Fuel tank",
    also: ["Fuel tank kind", "Tank"],
    help: "What the tank is made of, and whether it has a bag and foam.",
  },
  {
    ...item,
    kind: "quantity",
    dimension: "volume",
    units: { metric: "l", imperial: "gal" },
    key: "fuel.tank.capacity",
    label: "Fuel tank capacity",
    also: ["Tank capacity"],
    minimum: 0.005,
    maximum: 0.15,
    help: "Usable volume; a gallon is the imperial one unless US gal is written.",
  },
  {
    ...item,
    ...choice(
      { code: "mechanical", label: "Mechanical", also: ["mechanical pump", "lift pump"] },
      { code: "electric", label: "Electric", also: ["electric pump"] },
      {
        code: "electricCutOff",
        label: "Electric with inertia switch",
        also: ["electric with cut-off", "inertia switch"],
      },
    ),
    key: "fuel.pump",
    label: "Fuel pump",
    help: "What drives the pump. An electric one runs on after an accident unless a switch stops it.",
  },
  {
    ...item,
    ...choice(
      { code: "metal", label: "Metal pipe", also: ["copper", "steel pipe", "copper nickel"] },
      { code: "braided", label: "Braided hose", also: ["braided", "aviation hose"] },
      { code: "rubber", label: "Rubber hose", also: ["rubber"] },
      { code: "plastic", label: "Plastic pipe", also: ["nylon"] },
    ),
    key: "fuel.line",
    label: "Fuel line",
    also: ["Fuel lines", "Fuel pipe"],
    help: "What the long run from tank to engine is made of.",
  },
];
