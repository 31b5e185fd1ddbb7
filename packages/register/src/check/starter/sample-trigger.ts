// table: for each check that follows from a car, one car that it follows from and one from which it just does not
import type { Limits } from "../../specification/specification";

/** What a car has: characteristic → as entered; a sided one `key@left`. */
export type Parts = Readonly<Record<string, string>>;

export interface Trigger {
  readonly check: string;
  /** What the specification says. */
  readonly specified?: Parts;
  readonly limits?: Readonly<Record<string, Limits>>;
  readonly has: Parts;
  readonly hasNot: Parts;
  /** Day the car was read; 2026-04-01 when left out. The event is on 2026-11-25. */
  readonly read?: string;
  readonly readNot?: string;
}

const both = (key: string, left: string, right = left): Parts => ({
  [`${key}@left`]: left,
  [`${key}@right`]: right,
});
const degree = Math.PI / 180;

const perAxle = (["front", "rear"] as const).flatMap((axle): readonly Trigger[] => {
  const bar = `${axle}.antiRollBar.diameter`;
  const link = `${axle}.dropLink`;
  return [
    {
      check: `${axle}-link-rod-ends`,
      specified: { [`${link}.joint`]: "rubber bush" },
      has: { [`${link}.joint`]: "rod end" },
      hasNot: { [`${link}.joint`]: "ball joint" },
    },
    {
      check: `${axle}-link-spacers`,
      has: { [`${link}.spacerStack`]: "2.5 mm", [`${link}.boltGrade`]: "8.8" },
      hasNot: { [`${link}.spacerStack`]: "2 mm" },
    },
    {
      check: `${axle}-link-bolt-grade`,
      has: { [`${link}.boltGrade`]: "6.8" },
      hasNot: { [`${link}.boltGrade`]: "8.8" },
    },
    {
      check: `${axle}-bar-thicker`,
      specified: { [bar]: "16 mm" },
      has: { [bar]: "16.5 mm" },
      hasNot: { [bar]: "16.2 mm" },
    },
    {
      check: `${axle}-bar-added`,
      specified: { [bar]: "not fitted" },
      has: { [bar]: "16 mm" },
      hasNot: { [bar]: "not fitted" },
    },
    {
      check: `${axle}-bar-left-off`,
      specified: { [bar]: "16 mm" },
      has: { [bar]: "not fitted" },
      hasNot: { [bar]: "16 mm" },
    },
    {
      check: `${axle}-spring-changed`,
      specified: { [`${axle}.spring.rate`]: "120 lb/in" },
      has: { [`${axle}.spring.rate`]: "140 lb/in" },
      hasNot: { [`${axle}.spring.rate`]: "120 lb/in" },
    },
    {
      check: `${axle}-wheel-changed`,
      specified: { [`wheels.${axle}.size`]: "5J x 13" },
      has: { [`wheels.${axle}.size`]: "5.5J x 13" },
      hasNot: { [`wheels.${axle}.size`]: "5J x 13" },
    },
    {
      check: `${axle}-tyre-changed`,
      specified: { [`tyres.${axle}.size`]: "165 R 13" },
      has: { [`tyres.${axle}.size`]: "175/70 R 13" },
      hasNot: { [`tyres.${axle}.size`]: "165 R 13" },
    },
    { check: `${axle}-tyre-age`, has: { [`tyres.${axle}.manufactured`]: "2019-06-01" }, hasNot: {} },
    {
      check: `${axle}-wheel-spacer`,
      has: { [`wheels.${axle}.spacer`]: "5 mm" },
      hasNot: { [`wheels.${axle}.spacer`]: "not fitted" },
    },
    {
      check: `${axle}-camber`,
      specified: { [`${axle}.camber`]: "-1°" },
      limits: { [`${axle}.camber`]: { lower: -1.5 * degree, upper: -0.5 * degree } },
      has: both(`${axle}.camber`, "-1°42'", "-1°00'"),
      hasNot: both(`${axle}.camber`, "-1°24'", "-1°00'"),
    },
    {
      check: `${axle}-disc-drilled`,
      has: { [`${axle}.disc.face`]: "drilled and grooved" },
      hasNot: { [`${axle}.disc.face`]: "plain" },
    },
    {
      check: `${axle}-disc-thin`,
      limits: { [`${axle}.disc.thickness`]: { lower: 0.0115 } },
      has: both(`${axle}.disc.thickness`, "11.4 mm", "11.8 mm"),
      hasNot: both(`${axle}.disc.thickness`, "11.6 mm", "11.8 mm"),
    },
    {
      check: `${axle}-caliper-thread`,
      specified: { [`${axle}.caliper.boltThread`]: "7/16 UNF" },
      has: { [`${axle}.caliper.boltThread`]: "M10" },
      hasNot: { [`${axle}.caliper.boltThread`]: "7/16 UNF" },
    },
  ];
});

const choices: readonly (readonly [check: string, key: string, has: string, hasNot: string])[] = [
  ["single-circuit", "brakes.circuit", "single circuit", "tandem, front and rear"],
  ["silicone-fluid", "brakes.fluid", "DOT 5", "DOT 5.1"],
  ["extinguisher-none", "safety.extinguisher.kind", "not fitted", "hand-held"],
  ["plumbed-in-armed", "safety.extinguisher.kind", "plumbed-in", "hand-held"],
  ["isolator-none", "electrical.isolator", "not fitted", "inside only"],
  ["isolator-works", "electrical.isolator", "inside only", "at the battery only"],
  ["breather-open", "oil.breather", "to the open air", "to a catch tank"],
  ["roll-structure", "safety.rollStructure", "rear hoop", "not fitted"],
  ["fuel-line-rubber", "fuel.line", "rubber hose", "braided hose"],
  ["electric-pump-stops", "fuel.pump", "electric", "mechanical"],
  ["wire-spokes", "wheels.kind", "wire", "pressed steel"],
  ["split-rims", "wheels.kind", "split rim", "cast alloy"],
  ["silencer-none", "exhaust.silencer", "not fitted", "transverse box"],
  ["battery-in-cockpit", "electrical.batteryPlace", "cockpit", "boot"],
  ["fuel-cell", "fuel.tank.kind", "bag tank", "aluminium"],
];

const exchanged: readonly (readonly [check: string, key: string, specified: string, has: string])[] = [
  ["disc-diameter-changed", "front.disc.diameter", "240 mm", "260 mm"],
  ["steering-arm-changed", "steering.arm.source", "works forging", "donor saloon, bent"],
  ["stud-thread-changed", "wheels.stud.thread", "3/8 UNF", "M12x1.5"],
  ["nut-seat-changed", "wheels.nutSeat", "60° cone", "ball seat"],
  ["rear-brake-converted", "rear.brake.kind", "drums", "discs"],
  ["servo-removed", "brakes.servo", "2", "not fitted"],
  ["master-cylinder-changed", "brakes.masterCylinder.diameter", "0.7 in", "0.75 in"],
  ["rear-valve-removed", "brakes.rearValve", "pressure limiting valve", "not fitted"],
  ["upright-changed", "front.upright.source", "donor saloon", "billet, club batch"],
  ["half-shaft-joint-changed", "rear.halfShaft.joint", "universal joints", "constant-velocity joints"],
  ["chassis-braced", "chassis.bracing", "not fitted", "tubes to the front towers"],
];

const rest: readonly Trigger[] = [
  {
    check: "polyurethane-bushes",
    has: { "front.lowerArm.bush": "polyurethane", "front.upperArm.bush": "rubber" },
    hasNot: {
      "front.lowerArm.bush": "rubber",
      "front.upperArm.bush": "acetal",
      "rear.lowerLink.bush": "rubber",
    },
  },
  {
    check: "spherical-bushes",
    has: { "front.lowerArm.bush": "spherical", "front.upperArm.joint": "ball joint" },
    hasNot: {
      "front.lowerArm.bush": "needle rollers",
      "front.upperArm.joint": "ball joint",
      "front.upperArm.bush": "rubber",
    },
  },
  {
    check: "screwed-ball-joint",
    has: { "front.upperArm.joint": "adjustable ball joint" },
    hasNot: { "front.upperArm.joint": "ball joint", "front.lowerArm.joint": "trunnion" },
  },
  {
    check: "castor-outside",
    specified: { "front.castor": "4°" },
    limits: { "front.castor": { lower: 3.5 * degree, upper: 4.5 * degree } },
    has: both("front.castor", "4°45'"),
    hasNot: both("front.castor", "4°20'"),
  },
  {
    check: "castor-sides",
    has: both("front.castor", "4°00'", "4°36'"),
    hasNot: both("front.castor", "4°00'", "4°24'"),
  },
  {
    check: "camber-sides",
    has: both("front.camber", "-1°00'", "-0°24'"),
    hasNot: both("front.camber", "-1°00'", "-0°36'"),
  },
  {
    check: "toe-outside",
    specified: { "front.toe": "toe-in 0°06' per side" },
    limits: { "front.toe": { lower: 0, upper: 0.2 * degree } },
    has: both("front.toe", "toe-in 0°18' per side"),
    hasNot: both("front.toe", "toe-in 0°10' per side"),
  },
  {
    check: "settings-old",
    has: both("front.camber", "-1°"),
    hasNot: both("front.camber", "-1°"),
    read: "2024-11-24",
    readNot: "2024-11-26",
  },
  {
    check: "discs-measured-long-ago",
    has: both("front.disc.thickness", "12 mm"),
    hasNot: both("front.disc.thickness", "12 mm"),
    read: "2024-11-24",
    readNot: "2024-11-26",
  },
  {
    check: "tyre-pressure",
    limits: {
      "tyres.front.pressure": { lower: 160_000, upper: 200_000 },
      "tyres.rear.pressure": { lower: 160_000, upper: 200_000 },
    },
    has: { ...both("tyres.front.pressure", "1.80 bar"), ...both("tyres.rear.pressure", "2.10 bar") },
    hasNot: { ...both("tyres.front.pressure", "1.80 bar"), ...both("tyres.rear.pressure", "1.95 bar") },
  },
  {
    check: "ride-height-outside",
    specified: { "front.rideHeight": "120 mm" },
    limits: {
      "front.rideHeight": { lower: 0.1, upper: 0.13 },
      "rear.rideHeight": { lower: 0.1, upper: 0.13 },
    },
    has: { ...both("front.rideHeight", "95 mm"), ...both("rear.rideHeight", "120 mm") },
    hasNot: { ...both("front.rideHeight", "105 mm"), ...both("rear.rideHeight", "120 mm") },
  },
  {
    check: "harness-date",
    has: { "safety.harness.expires": "2026-11-24" },
    hasNot: { "safety.harness.expires": "2026-11-25" },
  },
  {
    check: "seat-date",
    has: { "safety.seat.expires": "2026-11-24" },
    hasNot: { "safety.seat.expires": "2026-11-25" },
  },
  {
    check: "extinguisher-due",
    has: { "safety.extinguisher.serviceDue": "2026-11-24" },
    hasNot: { "safety.extinguisher.serviceDue": "2026-11-25" },
  },
  {
    check: "catch-tank-small",
    has: { "oil.catchTank": "2.5 l", "engine.capacity": "2001 cm³" },
    hasNot: { "oil.catchTank": "2.5 l", "engine.capacity": "2000 cm³" },
  },
  {
    check: "stud-engagement",
    has: { "wheels.stud.engagement": "11.5 mm", "wheels.stud.thread": "M12x1.5" },
    hasNot: { "wheels.stud.engagement": "12 mm" },
  },
  {
    check: "tread-worn",
    has: { ...both("tyres.front.treadDepth", "1.5 mm", "3 mm"), ...both("tyres.rear.treadDepth", "3 mm") },
    hasNot: { ...both("tyres.front.treadDepth", "1.6 mm"), ...both("tyres.rear.treadDepth", "3 mm") },
  },
  {
    check: "pads-worn",
    has: both("front.pad.thickness", "6 mm", "2.9 mm"),
    hasNot: both("front.pad.thickness", "3 mm"),
  },
  {
    check: "bias-adjustable",
    has: { "brakes.rearValve": "adjustable valve", "brakes.circuit": "tandem, front and rear" },
    hasNot: { "brakes.rearValve": "pressure limiting valve", "brakes.circuit": "tandem, front and rear" },
  },
  {
    check: "bar-mild-steel",
    has: { "front.antiRollBar.material": "spring steel", "rear.antiRollBar.material": "mild steel" },
    hasNot: { "front.antiRollBar.material": "spring steel", "rear.antiRollBar.material": "spring steel" },
  },
];

/** Every check that follows from a car, with its two cars. */
export const triggers: readonly Trigger[] = [
  ...perAxle,
  ...choices.map(([check, key, has, hasNot]) => ({ check, has: { [key]: has }, hasNot: { [key]: hasNot } })),
  ...exchanged.map(([check, key, specified, has]) => ({
    check,
    specified: { [key]: specified },
    has: { [key]: has },
    hasNot: { [key]: specified },
  })),
  ...rest,
];
