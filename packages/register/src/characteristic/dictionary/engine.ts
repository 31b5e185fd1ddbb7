import type { Characteristic } from "../characteristic";
import { choice, gearRatio, length, part, text } from "./preset";

const item = { ...part, assembly: "engine" } as const;

/** Engine: where it comes from, size, induction, cooling. */
export const engine: readonly Characteristic[] = [
  {
    ...item,
    ...text,
    key: "engine.source",
    label: "Engine",
    also: ["Engine type", "Engine source"],
    help: "Type, donor and part or casting number.",
  },
  {
    ...item,
    kind: "quantity",
    dimension: "volume",
    units: { metric: "cm³", imperial: "in³" },
    key: "engine.capacity",
    label: "Engine capacity",
    also: ["Capacity", "Displacement", "Cubic capacity"],
    minimum: 0.0005,
    maximum: 0.008,
    help: "Swept volume of all cylinders, after any reboring.",
  },
  {
    ...item,
    ...length,
    key: "engine.bore",
    label: "Engine bore",
    also: ["Bore"],
    minimum: 0.05,
    maximum: 0.12,
    help: "Diameter of the cylinders as they are now.",
  },
  {
    ...item,
    ...length,
    key: "engine.stroke",
    label: "Engine stroke",
    also: ["Stroke"],
    minimum: 0.04,
    maximum: 0.13,
    help: "Travel of the pistons.",
  },
  {
    ...item,
    ...gearRatio,
    key: "engine.compressionRatio",
    label: "Compression ratio",
    minimum: 5,
    maximum: 16,
    help: "As built up: head skimmed, gasket and pistons included.",
  },
  {
    ...item,
    ...choice(
      { code: "singleDowndraught", label: "One downdraught carburettor", also: ["downdraught"] },
      {
        code: "twinChokeDowndraught",
        label: "Twin-choke downdraught carburettor",
        also: ["twin choke downdraught"],
      },
      {
        code: "twinSidedraught",
        label: "Two sidedraught carburettors",
        also: ["twin sidedraughts", "two sidedraughts"],
      },
      {
        code: "constantVacuum",
        label: "Constant-vacuum carburettors",
        also: ["constant depression", "twin constant vacuum"],
      },
      { code: "injection", label: "Injection", also: ["fuel injection", "EFI"] },
    ),
    key: "engine.induction",
    label: "Engine induction",
    also: ["Carburettor", "Carburettors", "Induction"],
    help: "What feeds the engine.",
  },
  {
    ...item,
    ...text,
    key: "engine.camshaft",
    label: "Camshaft",
    help: "Profile or part number of the camshaft.",
  },
  {
    ...item,
    ...choice(
      { code: "engineFan", label: "Fan on the engine", also: ["belt", "mechanical fan", "standard fan"] },
      { code: "electricFan", label: "Electric fan", also: ["electric"] },
      { code: "both", label: "Fan on the engine and electric fan", also: ["both fans"] },
    ),
    removable: true,
    key: "engine.fan",
    label: "Cooling fan",
    help: "What draws air through the radiator when the car stands.",
  },
];
