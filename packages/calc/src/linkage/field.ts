import { z } from "zod";
import { toe } from "../alignment/field";
import type { Vector } from "../alignment/vector";
import type { Source } from "../catalogue/computation";
import { quantity } from "../catalogue/field";

const coordinate = (label: string, help: string) =>
  quantity("length", { label, help, min: -10, max: 10, unit: "mm" });

/** A point of one corner: y counts outboard, on either side of the car, as the dictionary of characteristics has it. */
export function point(label: string) {
  return z
    .object({
      x: coordinate(`${label}, x`, "Forward of the front axle"),
      y: coordinate(`${label}, y`, "Outboard of the car's centre plane"),
      z: coordinate(`${label}, z`, "Above the ground"),
    })
    .meta({ title: label, description: "In the design position, on either side of the car alike" });
}

/** A point of a whole axle: y counts to the left. */
export function axlePoint(label: string) {
  return z
    .object({
      x: coordinate(`${label}, x`, "Forward of the front axle"),
      y: coordinate(`${label}, y`, "Left of the car's centre plane; negative on the right"),
      z: coordinate(`${label}, z`, "Above the ground"),
    })
    .meta({ title: label, description: "In the design position" });
}

/** Fields of the wheel in the design position. */
export const wheelFields = {
  wheelCentre: point("Wheel centre"),
  camber: quantity("angle", { label: "Camber as the hardpoints were taken", min: -0.7, max: 0.7, unit: "°" }),
  toeIn: toe({ label: "Toe as the hardpoints were taken" }),
  loadedRadius: quantity("length", { label: "Loaded radius of the tyre", above: 0, max: 1, unit: "mm" }),
};

const part = <Part extends string>(parts: readonly [Part, ...Part[]], what: string) =>
  z.enum(parts).meta({ title: `Part that carries the ${what}` });

function mount<Part extends string>(label: string, parts: readonly [Part, ...Part[]]) {
  return z
    .object({
      chassis: point(`${label}, end on the chassis`),
      moving: point(`${label}, moving end`),
      on: part(parts, label.toLowerCase()),
    })
    .meta({ title: label })
    .optional();
}

/** Fields of what hangs on a corner, each of which may be left out. */
export function mountFields<Part extends string>(parts: readonly [Part, ...Part[]]) {
  return {
    spring: mount("Spring", parts),
    damper: mount("Damper", parts),
    bar: z
      .object({
        axis: z
          .object({ from: point("Point on the bar's axis"), to: point("Another point on the bar's axis") })
          .meta({ title: "Line the bar turns about in the chassis" }),
        armEnd: point("Drop link's end on the bar"),
        moving: point("Drop link's end on the suspension"),
        on: part(parts, "drop link"),
      })
      .meta({ title: "Anti-roll bar, this side" })
      .optional(),
  };
}

/** Fields of the position asked for. */
export const positionFields = {
  bump: quantity("length", {
    label: "Travel of the wheel centre",
    help: "Up from the design position; negative is droop",
    min: -0.5,
    max: 0.5,
    unit: "mm",
  }).prefault("0 mm"),
};
/** Field of the rack travel, for a corner that steers. */
export const rackField = quantity("length", {
  label: "Travel of the rack",
  help: "Towards this wheel from straight ahead: on the left wheel, to the left",
  min: -0.5,
  max: 0.5,
  unit: "mm",
}).prefault("0 mm");

/** Coordinates in words for a working: "x 12.0, y 600.3, z 165.2 mm". */
export function pointInWords({ x, y, z: up }: Vector): string {
  const mm = (metres: number): string => (metres * 1000).toFixed(1);
  return `x ${mm(x)}, y ${mm(y)}, z ${mm(up)} mm`;
}

/** Where the constructions come from. */
export const linkageSources: readonly Source[] = [
  { title: "Rigid-body geometry: circles, spheres and twists (first principles)", status: "memory" },
  {
    title: "Instant-centre and roll-centre construction: Gillespie, Fundamentals of Vehicle Dynamics",
    locus: "ch. 7",
    status: "memory",
  },
  { title: "ISO 8855:2011, axes and angles", locus: "7.1, 7.2", status: "memory" },
];
/** What all linkages take for granted. */
export const rigidValidity =
  "Rigid parts, joints and bushes without give, chassis held still. Travel is that of the wheel centre from the design position. Refused where the linkage does not reach.";
