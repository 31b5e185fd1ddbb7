import type { Source } from "../catalogue/computation";
import { exampleWishbone } from "../linkage/example";
import { linkageSources } from "../linkage/field";
import { printQuantity } from "../quantity/print";
import { printToe } from "../quantity/toe-print";
import type { Settings } from "./setting";

/** An output in degrees. */
export const degrees = { dimension: "angle", unit: "°", decimals: 3 } as const;
/** An output in minutes of arc. */
export const minutes = { dimension: "angle", unit: "'", decimals: 2 } as const;
/** An output in millimetres. */
export const millimetres = { dimension: "length", unit: "mm", decimals: 2 } as const;

/** Where the planner's constructions and order of work come from. */
export const sources: readonly Source[] = [
  ...linkageSources,
  { title: "Order of work", status: "common practice, no source" as const },
];
/** What somebody under a car must know before turning anything. */
export const caution =
  "Screwing a joint out shortens its thread engagement, and shims use up bolt: keep the engagement the workshop manual asks for. Settle the suspension and measure after each step, lock everything before the car moves, and have the work checked by a competent mechanic.";

const { spring: _spring, damper: _damper, bar: _bar, side: _side, ...corner } = exampleWishbone;
/** The joint that both examples turn. */
export const exampleJoint = {
  kind: "screwedJoint",
  name: "upper ball joint",
  point: "upperJoint",
  axis: { x: -0.05, y: 1, z: 0.08 },
  pitch: "1.5 mm",
  step: 0.5,
  lowest: -4,
  highest: 4,
} as const;

/** The corner of both examples. */
export const exampleCorner = { layout: "double wishbone" as const, ...corner };

/** After less before; `null` where there is none. */
export function difference(after: number | null, before: number | null): number | null {
  return after === null || before === null ? null : after - before;
}

/** A gauge's reading in words. */
export function settingsInWords({
  camber,
  castor,
  toeIn,
}: Pick<Settings, "camber" | "castor" | "toeIn">): string {
  const angle = (value: number): string =>
    printQuantity(value, { dimension: "angle", unit: "°", decimals: 2 });
  const side = castor === null ? "" : `, castor ${angle(castor)}`;
  return `camber ${angle(camber)}${side}, ${printToe(toeIn, { share: "perSide", unit: "'" })}`;
}
