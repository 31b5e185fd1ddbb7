import type { Characteristic } from "../characteristic";
import { angle, choice, date, degree, gearRatio, length, part, text } from "./preset";

const item = { ...part, assembly: "steering" } as const;
const perTurn = 1 / (2 * Math.PI);

/** Steering: box or rack, ratio, lock, arms, joints, column. */
export const steering: readonly Characteristic[] = [
  {
    ...item,
    ...choice(
      { code: "rack", label: "Rack and pinion", also: ["rack & pinion"] },
      { code: "box", label: "Steering box", also: ["worm and peg", "recirculating ball", "cam and peg"] },
    ),
    key: "steering.kind",
    label: "Steering",
    also: ["Steering kind", "Steering gear"],
    help: "Rack and pinion, or a box with a drop arm.",
  },
  {
    ...item,
    ...text,
    key: "steering.source",
    label: "Steering rack or box",
    also: ["Steering rack", "Steering rack source", "Steering box source"],
    help: "Where the rack or box comes from: donor and part number.",
  },
  {
    ...item,
    ...gearRatio,
    key: "steering.ratio",
    label: "Steering ratio",
    minimum: 5,
    maximum: 30,
    help: "Turning of the steering wheel per turning of the road wheels, straight ahead.",
  },
  {
    ...item,
    kind: "quantity",
    dimension: "lengthPerAngle",
    units: { metric: "mm/turn", imperial: "in/turn" },
    key: "steering.rackTravel",
    label: "Steering rack travel per turn",
    also: ["Rack travel per turn"],
    minimum: 0.02 * perTurn,
    maximum: 0.12 * perTurn,
    help: "How far the rack moves per turn of the pinion.",
  },
  {
    ...item,
    ...angle,
    key: "steering.lock",
    label: "Steering lock",
    minimum: 15 * degree,
    maximum: 50 * degree,
    help: "Largest angle of the inner wheel, on turn plates, before a stop or the tyre meets something.",
  },
  {
    ...item,
    ...text,
    key: "steering.arm.source",
    label: "Steering arm",
    also: ["Steering arm source", "Steering arms"],
    help: "Where the steering arms come from, and whether they were bent, drilled or shortened.",
  },
  {
    ...item,
    ...date,
    key: "steering.arm.crackTested",
    label: "Steering arm crack-tested on",
    also: ["Steering arm crack test", "Crack test of the steering arms"],
    help: "Day of the last crack test, from its certificate.",
  },
  {
    ...item,
    ...length,
    key: "steering.arm.length",
    label: "Steering arm length",
    minimum: 0.06,
    maximum: 0.25,
    help: "From the steering axis to the tie rod's outer joint, square to the axis.",
  },
  {
    ...item,
    ...choice(
      { code: "rigid", label: "Rigid", also: ["rigid column", "one piece"] },
      { code: "jointed", label: "Jointed", also: ["universal joint", "with universal joint"] },
      { code: "collapsible", label: "Collapsible", also: ["telescopic", "collapsing"] },
    ),
    key: "steering.column",
    label: "Steering column",
    help: "Whether the column can give way in a frontal impact.",
  },
];
