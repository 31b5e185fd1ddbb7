import type { Feed, Place } from "../binding";

export type Axle = "front" | "rear";

/** Both axles with their names as a label begins. */
export const axles: readonly { readonly axle: Axle; readonly name: string }[] = [
  { axle: "front", name: "Front" },
  { axle: "rear", name: "Rear" },
];

/** The car's own value. */
export const of = (key: string, side?: "left"): Feed =>
  side === undefined ? { from: "characteristic", key } : { from: "characteristic", key, side };

/** The car's own value, left out where it is not known. */
export const perhaps = (key: string): Feed => ({ from: "characteristic", key, optional: true });

export const result = (binding: string, output: string): Feed => ({ from: "result", binding, output });

export const assumed = (value: unknown, says: string): Feed => ({ from: "assumption", value, says });

export const group = (fields: Readonly<Record<string, Feed>>): Feed => ({ from: "group", fields });

export const firstOf = (...feeds: readonly Feed[]): Feed => ({ from: "firstOf", feeds });

const both = (key: string): readonly Place[] => [
  { key, side: "left" },
  { key, side: "right" },
];

/** The two wheels' scale readings of an axle together. */
export const axleMass = (axle: Axle): Feed => ({
  from: "values",
  of: both(`${axle}.cornerWeight`),
  says: "both corner weights of the axle together",
  value: ([left = 0, right = 0]) => left + right,
});

/** What rests on one spring: half of the axle's corner weights less what moves with the wheels. */
export const sprungMass = (axle: Axle): Extract<Feed, { readonly from: "values" }> => ({
  from: "values",
  of: [...both(`${axle}.cornerWeight`), { key: `${axle}.unsprungMass` }],
  says: "half of both corner weights less the unsprung mass",
  value: ([left = 0, right = 0, unsprung = 0]) => (left + right - unsprung) / 2,
});

/** Roll-centre height from an axle's own hardpoints, by whichever linkage guides its wheels. */
export const rollCentre = (axle: Axle): readonly Feed[] =>
  (axle === "front" ? ["front.linkage", "front.strutLinkage"] : ["rear.armLinkage", "rear.swingLinkage"]).map(
    (binding) => result(binding, "rollCentreHeight"),
  );

/** Height of a wheel's centre from the tyre's nominal size. */
export const wheelRadius = (axle: Axle): Feed => ({
  from: "result",
  binding: `${axle}.tyre.size`,
  output: "overallDiameter",
  times: { factor: 0.5, says: "half the overall diameter of a new tyre without load" },
});
