import type { ChoiceCharacteristic } from "../characteristic";

/** What most characteristics of a part are; an entry overrides what differs. */
export const part = { sided: false, setting: false, removable: false } as const;
/** A part that may be left off. */
export const removablePart = { ...part, removable: true } as const;
/** Something adjusted or worn, measured on each side. */
export const sidedSetting = { sided: true, setting: true, removable: false } as const;
/** Something adjusted or worn that the car has once. */
export const setting = { sided: false, setting: true, removable: false } as const;

export const length = {
  kind: "quantity",
  dimension: "length",
  units: { metric: "mm", imperial: "in" },
} as const;
export const angle = {
  kind: "quantity",
  dimension: "angle",
  units: { metric: "°", imperial: "°" },
} as const;
export const mass = { kind: "quantity", dimension: "mass", units: { metric: "kg", imperial: "lb" } } as const;
export const rate = {
  kind: "quantity",
  dimension: "rate",
  units: { metric: "N/mm", imperial: "lb/in" },
} as const;
export const pressure = {
  kind: "quantity",
  dimension: "pressure",
  units: { metric: "bar", imperial: "psi" },
} as const;
/** A ratio said as "3.89:1". */
export const gearRatio = {
  kind: "quantity",
  dimension: "ratio",
  units: { metric: ":1", imperial: ":1" },
} as const;
/** A plain ratio, said as "0.62". */
export const ratio = { kind: "quantity", dimension: "ratio", units: { metric: "", imperial: "" } } as const;
export const count = { kind: "quantity", dimension: "count", units: { metric: "", imperial: "" } } as const;

export const text = { kind: "text", maximumLength: 120 } as const;
export const date = { kind: "date" } as const;
export const thread = { kind: "designation", designation: "thread" } as const;
export const grade = { kind: "designation", designation: "grade" } as const;
export const tyre = { kind: "designation", designation: "tyre" } as const;
export const wheel = { kind: "designation", designation: "wheel" } as const;

type Choices = ChoiceCharacteristic["choices"];

/** A choice of a closed list. */
export function choice(...choices: Choices): { readonly kind: "choice"; readonly choices: Choices } {
  return { kind: "choice", choices };
}

/** One degree in radians. */
export const degree = Math.PI / 180;

/** What a pivot turns in. */
export const bushes = choice(
  {
    code: "rubber",
    label: "Rubber bush",
    also: ["rubber", "metal-rubber", "bonded rubber", "standard rubber"],
  },
  {
    code: "polyurethane",
    label: "Polyurethane bush",
    also: ["polyurethane", "poly", "poly bush", "PU", "urethane"],
  },
  { code: "acetal", label: "Acetal or nylon bush", also: ["acetal", "nylon", "plastic bush", "POM"] },
  { code: "bronze", label: "Bronze bush", also: ["bronze", "brass", "plain bush"] },
  {
    code: "spherical",
    label: "Spherical bearing",
    also: ["spherical", "rod end", "rod ends", "spherical joint"],
  },
  { code: "needle", label: "Needle rollers", also: ["needle roller", "needle bearing"] },
);

/** What joins an arm to the upright. */
export const outerJoints = choice(
  {
    code: "ballJoint",
    label: "Ball joint",
    also: ["balljoint", "ball-joint", "standard ball joint", "fixed ball joint"],
  },
  {
    code: "adjustableBallJoint",
    label: "Adjustable ball joint",
    also: ["adjustable", "screwed ball joint", "adjustable balljoint"],
  },
  { code: "trunnion", label: "Trunnion", also: ["screwed trunnion", "bronze trunnion"] },
  { code: "spherical", label: "Spherical bearing", also: ["spherical", "rod end", "spherical joint"] },
  { code: "bush", label: "Bush and bolt", also: ["bush", "rubber bush"] },
);

/** How the length or place of an arm is adjusted. */
export const adjustments = choice(
  { code: "none", label: "Not adjustable", also: ["fixed", "no adjustment"] },
  { code: "shims", label: "Shims", also: ["shim", "shim packs"] },
  { code: "screw", label: "Screwed joint", also: ["screw", "threaded", "turnbuckle", "screwed rod end"] },
  { code: "eccentric", label: "Eccentric bolt", also: ["eccentric", "cam bolt", "camber bolt"] },
  { code: "slots", label: "Slotted holes", also: ["slotted", "slots"] },
);
