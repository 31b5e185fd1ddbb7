import type { Characteristic } from "../characteristic";
import { choice, part, removablePart } from "./preset";

const item = { ...part, assembly: "electrical" } as const;

/** Electrical: earth, charging, ignition, battery, isolator. */
export const electrical: readonly Characteristic[] = [
  {
    ...item,
    ...choice(
      { code: "negative", label: "Negative earth", also: ["negative", "neg"] },
      { code: "positive", label: "Positive earth", also: ["positive", "pos"] },
    ),
    key: "electrical.earth",
    label: "Earth polarity",
    also: ["Earth", "Polarity"],
    help: "Which pole of the battery goes to the chassis.",
  },
  {
    ...item,
    ...choice(
      { code: "dynamo", label: "Dynamo", also: ["generator"] },
      { code: "alternator", label: "Alternator", also: ["alt"] },
    ),
    key: "electrical.generator",
    label: "Dynamo or alternator",
    also: ["Charging"],
    help: "What charges the battery.",
  },
  {
    ...item,
    ...choice(
      { code: "points", label: "Contact breaker", also: ["points", "contact points"] },
      {
        code: "electronicInDistributor",
        label: "Electronic, in the distributor",
        also: ["electronic", "electronic ignition"],
      },
      {
        code: "mapped",
        label: "Mapped, without distributor",
        also: ["mapped", "distributorless", "programmable"],
      },
    ),
    key: "electrical.ignition",
    label: "Ignition",
    help: "What triggers the spark.",
  },
  {
    ...item,
    ...choice(
      { code: "engineBay", label: "Engine bay", also: ["front", "under bonnet"] },
      { code: "boot", label: "Boot", also: ["rear"] },
      { code: "cockpit", label: "Cockpit", also: ["behind seats", "inside"] },
    ),
    key: "electrical.batteryPlace",
    label: "Battery place",
    also: ["Battery position", "Battery"],
    help: "Where the battery sits. In the cockpit it needs a sealed or vented case.",
  },
  {
    ...removablePart,
    assembly: "electrical",
    ...choice(
      { code: "inside", label: "Inside only", also: ["inside"] },
      {
        code: "insideOutside",
        label: "Inside and outside",
        also: ["inside and out", "both", "with pull cable"],
      },
      { code: "batteryOnly", label: "At the battery only", also: ["battery key", "battery isolator"] },
    ),
    key: "electrical.isolator",
    label: "Circuit breaker",
    also: ["Battery isolator", "Master switch", "Cut-off switch"],
    help: "Switch that stops engine and current, and from where it can be worked. Say not fitted where there is none.",
  },
];
