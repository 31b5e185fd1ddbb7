import { z } from "zod";
import { toe } from "../alignment/field";
import { type Computed, defineComputation, type Outputs } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { worked } from "../spring/worked";
import { exampleLiveAxle } from "./example";
import { axlePoint, linkageSources, point } from "./field";
import type { Mounts } from "./hardpoint";
import { type LiveAxle, type LiveAxleHardpoints, liveAxle } from "./live-axle";
import { readLiveAxle, rollLiveAxle } from "./live-axle-reading";
import { mirrorHardpoints } from "./mirror";
import { heaveField, rollField } from "./roll.entry";

const kind = <Name extends string>(name: Name, title: string) => z.literal(name).meta({ title });
const rod = (label: string) =>
  z
    .object({ chassis: axlePoint(`${label}, on the chassis`), axle: axlePoint(`${label}, on the axle`) })
    .meta({ title: label });
const mount = (label: string) =>
  z
    .object({ chassis: point(`${label}, end on the chassis`), moving: point(`${label}, end on the axle`) })
    .meta({ title: `${label}, the other side alike` })
    .optional();

const bar = z
  .object({
    axis: z
      .object({ from: point("Point on the bar's axis"), to: point("Another point on the bar's axis") })
      .meta({ title: "Line the bar turns about in the chassis" }),
    armEnd: point("Drop link's end on the bar"),
    moving: point("Drop link's end on the axle"),
  })
  .meta({ title: "Anti-roll bar that turns in the chassis, the other side alike" })
  .optional();

const input = z.object({
  wheelCentre: point("Wheel centre"),
  camber: quantity("angle", { label: "Camber of each wheel", min: -0.7, max: 0.7, unit: "°" }).prefault("0°"),
  toeIn: toe({ label: "Toe of each wheel" }).prefault(0),
  loadedRadius: quantity("length", { label: "Loaded radius of the tyre", above: 0, max: 1, unit: "mm" }),
  location: z
    .discriminatedUnion("kind", [
      z.object({
        kind: kind("three-link", "What locates the axle lengthways"),
        links: z
          .object({ first: rod("First link"), second: rod("Second link"), third: rod("Third link") })
          .meta({ title: "Links" }),
      }),
      z.object({
        kind: kind("torque-tube", "What locates the axle lengthways"),
        ball: axlePoint("Front ball of the torque tube"),
      }),
    ])
    .meta({ title: "Location lengthways" }),
  lateral: z
    .discriminatedUnion("kind", [
      z.object({
        kind: kind("panhard", "What locates the axle sideways"),
        chassis: axlePoint("Panhard rod, on the chassis"),
        axle: axlePoint("Panhard rod, on the axle"),
      }),
      z.object({
        kind: kind("watt", "What locates the axle sideways"),
        pivotOn: z.enum(["axle", "chassis"]).meta({ title: "What carries the bellcrank" }),
        pivot: axlePoint("Bellcrank pivot"),
        firstArm: axlePoint("First rod, on the bellcrank"),
        firstEnd: axlePoint("First rod, other end"),
        secondArm: axlePoint("Second rod, on the bellcrank"),
        secondEnd: axlePoint("Second rod, other end"),
      }),
    ])
    .meta({ title: "Location sideways" }),
  spring: mount("Spring"),
  damper: mount("Damper"),
  bar,
  heave: heaveField,
  roll: rollField,
});

const millimetres = { dimension: "length", unit: "mm", decimals: 2 } as const;
const minutes = { dimension: "angle", unit: "'", decimals: 2 } as const;
const ratio = { dimension: "ratio", decimals: 4 } as const;
const outputs = {
  rollCentreHeight: {
    how: ["z_RC", "point of the centre plane that does not move sideways under the car as the axle rolls"],
    label: "Roll-centre height over the ground",
    ...millimetres,
  },
  lateralShift: {
    how: ["Δy", "middle of the axle now less in the design position"],
    label: "Axle to the left of its design position",
    ...millimetres,
  },
  thrust: {
    how: ["ψ", "half of left less right toe-in"],
    label: "Heading of the axle, positive to the right",
    ...minutes,
  },
  rollSteer: {
    how: ["ψ′", "turn of the axle in plan over its roll, both wheels moving oppositely"],
    label: "Axle steer to the left per roll left side up",
    ...ratio,
  },
  leftForward: {
    how: ["Δx_l", "left contact point now less in the design position"],
    label: "Left wheel forwards of its design position",
    ...millimetres,
  },
  rightForward: {
    how: ["Δx_r", "right contact point now less in the design position"],
    label: "Right wheel forwards of its design position",
    ...millimetres,
  },
  leftCamber: {
    how: ["γ_l", "−asin n_z, n the left spin axis pointing outboard"],
    label: "Camber to the car, left",
    dimension: "angle",
    unit: "°",
    decimals: 3,
  },
  rightCamber: {
    how: ["γ_r", "as above, of the right wheel"],
    label: "Camber to the car, right",
    dimension: "angle",
    unit: "°",
    decimals: 3,
  },
  totalToe: { how: ["θ_t", "toe-in of both wheels together"], label: "Total toe-in", ...minutes },
  springBumpRatio: {
    how: ["MR_s", "shortening per rise of the wheel, both wheels rising"],
    label: "Motion ratio of the left spring in bump",
    ...ratio,
  },
  springRollRatio: {
    how: ["MR_sφ", "as above, the other wheel falling as much"],
    label: "Motion ratio of the left spring in roll",
    ...ratio,
  },
  damperBumpRatio: {
    how: ["MR_d", "as the spring's, both wheels rising"],
    label: "Motion ratio of the left damper in bump",
    ...ratio,
  },
  damperRollRatio: {
    how: ["MR_dφ", "as above, the other wheel falling as much"],
    label: "Motion ratio of the left damper in roll",
    ...ratio,
  },
  barBumpRatio: {
    how: ["MR_b", "movement of the bar's arm end per rise, both wheels rising: the bar does not twist"],
    label: "Arm of the anti-roll bar over wheel, in bump",
    ...ratio,
  },
  barRollRatio: {
    how: ["MR_bφ", "as above, the other wheel falling as much: the bar twists"],
    label: "Motion ratio of the anti-roll bar",
    ...ratio,
  },
} as const satisfies Outputs;

const { left } = exampleLiveAxle;
const onAxle = <T extends object>(mounted: T | undefined) =>
  mounted === undefined ? undefined : { ...mounted, on: "axle" as const };

function locationOf(given: z.output<typeof input>["location"]): LiveAxleHardpoints["location"] {
  if (given.kind === "torque-tube") return given;
  const { first, second, third } = given.links;
  return { kind: given.kind, links: [first, second, third] };
}

function assemble(given: z.output<typeof input>): LiveAxle {
  const { wheelCentre, camber, toeIn, loadedRadius, lateral } = given;
  const location = locationOf(given.location);
  const mounts: Mounts<"axle"> = {
    spring: onAxle(given.spring),
    damper: onAxle(given.damper),
    bar: onAxle(given.bar),
  };
  const end = { side: "left" as const, wheelCentre, camber, toeIn, loadedRadius, ...mounts };
  const hardpoints: LiveAxleHardpoints = { left: end, right: mirrorHardpoints(end), location, lateral };
  return liveAxle(hardpoints);
}

/** Catalogue entry `linkage.liveAxle`. */
export const liveAxleComputation = defineComputation({
  name: "linkage.liveAxle",
  title: "Live axle in bump and roll",
  summary:
    "Roll centre, sideways shift, roll steer and motion ratios of a live axle with a Panhard rod or a Watt linkage.",
  input,
  outputs,
  source: linkageSources,
  validity:
    "Rigid axle and links, joints without give, chassis held still. Three links and one lateral device, or a torque tube and one: two upper links side by side are entered as one between them (exact in bump with parallel links, close in roll); a leaf spring's front half as a link. A Watt bellcrank turns about the car's x axis. An anti-roll bar turns in the chassis and is linked to the axle; one carried by the axle is not covered. Refused where the axle is not held or does not reach.",
  example: {
    wheelCentre: left.wheelCentre,
    loadedRadius: left.loadedRadius,
    location: {
      kind: "three-link",
      links: {
        first: { chassis: { x: -1.78, y: 0.47, z: 0.255 }, axle: { x: -2.25, y: 0.5, z: 0.27 } },
        second: { chassis: { x: -1.78, y: -0.47, z: 0.255 }, axle: { x: -2.25, y: -0.5, z: 0.27 } },
        third: { chassis: { x: -1.9, y: 0, z: 0.4 }, axle: { x: -2.23, y: 0, z: 0.42 } },
      },
    },
    lateral: {
      kind: "panhard",
      chassis: { x: -2.33, y: -0.43, z: 0.345 },
      axle: { x: -2.33, y: 0.44, z: 0.305 },
    },
    spring: { chassis: { x: -2.24, y: 0.43, z: 0.59 }, moving: { x: -2.25, y: 0.45, z: 0.34 } },
    damper: { chassis: { x: -2.33, y: 0.38, z: 0.6 }, moving: { x: -2.32, y: 0.5, z: 0.25 } },
    bar: {
      axis: { from: { x: -1.95, y: -0.3, z: 0.36 }, to: { x: -1.95, y: 0.3, z: 0.36 } },
      armEnd: { x: -2.2, y: 0.42, z: 0.37 },
      moving: { x: -2.21, y: 0.425, z: 0.28 },
    },
    heave: "20 mm",
    roll: "2°",
  },
  compute(given) {
    const axle = assemble(given);
    rollLiveAxle(axle, given);
    return answer(axle, given);
  },
});

function answer(axle: LiveAxle, given: z.output<typeof input>): Computed<typeof outputs> {
  const { left: l, right: r, ...whole } = readLiveAxle(axle);
  return {
    outputs: {
      rollCentreHeight: whole.rollCentreHeight,
      lateralShift: whole.lateralShift,
      thrust: whole.thrust,
      rollSteer: whole.rollSteer,
      leftForward: l.forwardShift,
      rightForward: r.forwardShift,
      leftCamber: l.camber,
      rightCamber: r.camber,
      totalToe: l.toeIn + r.toeIn,
      springBumpRatio: l.spring?.bumpRatio ?? null,
      springRollRatio: l.spring?.rollRatio ?? null,
      damperBumpRatio: l.damper?.bumpRatio ?? null,
      damperRollRatio: l.damper?.rollRatio ?? null,
      barBumpRatio: l.bar?.ratio ?? null,
      barRollRatio: l.barRollRatio,
    },
    working: () =>
      worked([
        ["z", "Mean travel", "given", given.heave, "length", "mm"],
        ["φ", "Roll", "given", given.roll, "angle", "°", "left side up is positive"],
        [
          "z_l",
          "Travel of the left wheel centre",
          "so that the ground slopes by the roll",
          axle.bumpLeft,
          "length",
          "mm",
        ],
        [
          "z_r",
          "Travel of the right wheel centre",
          "so that the ground slopes by the roll",
          axle.bumpRight,
          "length",
          "mm",
        ],
        [
          "h",
          "Roll centre",
          "where the rolling axle does not move sideways",
          whole.rollCentreHeight,
          "length",
          "mm",
          "with links straight ahead: where the Panhard rod crosses the centre plane, or the Watt pivot",
        ],
        ["l_s", "Length of the left spring", "between its ends", l.spring?.length ?? null, "length", "mm"],
        ["l_d", "Length of the left damper", "between its ends", l.damper?.length ?? null, "length", "mm"],
        ["α", "Turn of the bar's left arm", "from the design position", l.bar?.angle ?? null, "angle", "°"],
      ]),
    warnings: missing(given),
  };
}

function missing(given: z.output<typeof input>): string[] {
  const hung = { spring: given.spring, damper: given.damper, "anti-roll bar": given.bar };
  const left = Object.entries(hung).flatMap(([name, mounted]) => (mounted === undefined ? [name] : []));
  return left.length === 0 ? [] : [`Not given, so without a motion ratio: ${left.join(", ")}.`];
}
