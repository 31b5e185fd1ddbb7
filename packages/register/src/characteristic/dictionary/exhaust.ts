import type { Characteristic } from "../characteristic";
import { choice, length, part, setting, text } from "./preset";

const item = { ...part, assembly: "exhaust" } as const;

/** Exhaust and noise. */
export const exhaust: readonly Characteristic[] = [
  {
    ...item,
    ...choice(
      { code: "cast", label: "Cast manifold", also: ["cast", "cast iron", "standard"] },
      { code: "tubular", label: "Tubular manifold", also: ["tubular", "four branch", "headers"] },
    ),
    key: "exhaust.manifold",
    label: "Exhaust manifold",
    help: "What the engine breathes out into.",
  },
  {
    ...item,
    ...length,
    key: "exhaust.bore",
    label: "Exhaust pipe diameter",
    also: ["Exhaust diameter", "Exhaust bore"],
    minimum: 0.025,
    maximum: 0.09,
    help: "Outside diameter of the main pipe.",
  },
  {
    ...item,
    ...text,
    removable: true,
    key: "exhaust.silencer",
    label: "Silencer",
    also: ["Exhaust silencer", "Muffler"],
    help: "How many silencers, and whose.",
  },
  {
    ...item,
    ...choice(
      { code: "rear", label: "Rear", also: ["tail", "back"] },
      { code: "side", label: "Side", also: ["side exit", "side pipe"] },
    ),
    key: "exhaust.outlet",
    label: "Exhaust outlet",
    help: "Where the pipe ends: noise is measured at 45° to it.",
  },
  {
    ...setting,
    assembly: "exhaust",
    kind: "quantity",
    dimension: "soundLevel",
    units: { metric: "dB(A)", imperial: "dB(A)" },
    key: "exhaust.noise",
    label: "Exhaust noise",
    also: ["Noise", "Static noise", "Noise level"],
    minimum: 60,
    maximum: 130,
    help: "Stationary level, A-weighted, at the distance and engine speed the sheet names.",
  },
];
