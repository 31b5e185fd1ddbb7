import type { Characteristic } from "../characteristic";
import { choice, count, length, part, ratio, removablePart, text, thread } from "./preset";
import type { Axle } from "./suspension";

const item = { ...part, assembly: "brakes" } as const;
const faces = choice(
  { code: "plain", label: "Plain", also: ["standard", "smooth"] },
  { code: "grooved", label: "Grooved", also: ["slotted", "grooves"] },
  { code: "drilled", label: "Cross-drilled", also: ["cross drilled discs", "holes"] },
  {
    code: "drilledGrooved",
    label: "Drilled and grooved",
    also: ["grooved and drilled", "drilled and slotted"],
  },
);

function caliperOf(axle: Axle, name: string): readonly Characteristic[] {
  return [
    {
      ...item,
      ...text,
      key: `${axle}.caliper.source`,
      label: `${name} caliper`,
      also: [`${name} caliper source`, `${name} calipers`],
      help: "Where the caliper comes from: donor and part number, or the kit it belongs to.",
    },
    {
      ...item,
      ...count,
      key: `${axle}.caliper.pistons`,
      label: `${name} caliper pistons`,
      minimum: 1,
      maximum: 8,
      help: "Pistons of one caliper, both faces together.",
    },
    {
      ...item,
      ...length,
      key: `${axle}.caliper.pistonDiameter`,
      label: `${name} caliper piston diameter`,
      also: [`${name} piston diameter`],
      minimum: 0.02,
      maximum: 0.08,
      help: "Diameter of one piston; where they differ, that of a single piston with the mean area, with a note.",
    },
    {
      ...item,
      ...thread,
      key: `${axle}.caliper.boltThread`,
      label: `${name} caliper bolt thread`,
      also: [`${name} caliper bolts`, `${name} caliper bolt`],
      help: "Thread of the bolts that hold the caliper to the upright. Calipers of one shape were made with unified and with metric threads, which do not go together.",
    },
  ];
}

function discAndPadsOf(axle: Axle, name: string): readonly Characteristic[] {
  return [
    {
      ...item,
      ...length,
      key: `${axle}.disc.diameter`,
      label: `${name} disc diameter`,
      also: [`${name} brake disc diameter`],
      minimum: 0.15,
      maximum: 0.4,
      help: "Outside diameter of the disc.",
    },
    {
      ...item,
      ...length,
      sided: true,
      setting: true,
      key: `${axle}.disc.thickness`,
      label: `${name} disc thickness`,
      minimum: 0.003,
      maximum: 0.04,
      help: "Measured with a micrometer inside the lip, least of several places.",
    },
    {
      ...item,
      ...length,
      key: `${axle}.disc.minimumThickness`,
      label: `${name} disc minimum thickness`,
      minimum: 0.003,
      maximum: 0.04,
      help: "Stamped on the disc or given by its supplier; below it the disc is scrap.",
    },
    {
      ...item,
      ...faces,
      key: `${axle}.disc.face`,
      label: `${name} disc face`,
      help: "Whether the rubbing face is plain, grooved or drilled. Drilled discs crack from the holes.",
    },
    {
      ...item,
      ...text,
      key: `${axle}.pad.material`,
      label: `${name} pad material`,
      also: [`${name} pads`, `${name} brake pads`],
      help: "Grade of the friction material as marked on the pad's back.",
    },
    {
      ...item,
      ...length,
      sided: true,
      setting: true,
      key: `${axle}.pad.thickness`,
      label: `${name} pad thickness`,
      minimum: 0,
      maximum: 0.03,
      help: "Friction material left on the thinner pad, without the backing plate.",
    },
  ];
}

const rearDrum: readonly Characteristic[] = [
  {
    ...item,
    ...choice(
      { code: "drum", label: "Drums", also: ["drum brakes"] },
      { code: "disc", label: "Discs", also: ["disc brakes", "disk", "disks"] },
    ),
    key: "rear.brake.kind",
    label: "Rear brake",
    also: ["Rear brakes", "Rear brake kind"],
    help: "Drums or discs at the rear.",
  },
  {
    ...item,
    ...length,
    sided: true,
    setting: true,
    key: "rear.drum.diameter",
    label: "Rear drum diameter",
    minimum: 0.15,
    maximum: 0.35,
    help: "Inside diameter of the drum as it is now; its limit is stamped on it.",
  },
  {
    ...item,
    ...length,
    key: "rear.wheelCylinder.diameter",
    label: "Rear wheel cylinder diameter",
    also: ["Wheel cylinder diameter"],
    minimum: 0.012,
    maximum: 0.035,
    help: "Bore of the wheel cylinder, cast on its body.",
  },
];

const hydraulics: readonly Characteristic[] = [
  {
    ...item,
    ...length,
    key: "brakes.masterCylinder.diameter",
    label: "Brake master cylinder diameter",
    also: ["Master cylinder diameter", "Brake master cylinder", "Master cylinder"],
    minimum: 0.012,
    maximum: 0.035,
    help: "Bore of the master cylinder, cast or stamped on its body.",
  },
  {
    ...item,
    ...choice(
      { code: "single", label: "Single circuit", also: ["one circuit", "single line"] },
      {
        code: "tandem",
        label: "Tandem, front and rear",
        also: ["dual circuit", "dual", "front and rear split"],
      },
      { code: "diagonal", label: "Tandem, diagonal", also: ["diagonal split"] },
      {
        code: "twinCylinders",
        label: "Two cylinders with balance bar",
        also: ["balance bar", "bias pedal box", "twin cylinders"],
      },
    ),
    key: "brakes.circuit",
    label: "Brake circuits",
    also: ["Brake circuit"],
    help: "How many hydraulic circuits there are and what they serve.",
  },
  {
    ...item,
    ...ratio,
    removable: true,
    key: "brakes.servo",
    label: "Brake servo ratio",
    also: ["Brake servo", "Servo"],
    minimum: 1,
    maximum: 8,
    help: "Boost of the servo, line pressure with it over line pressure without. Say not fitted where there is none.",
  },
  {
    ...item,
    ...ratio,
    key: "brakes.pedalRatio",
    label: "Brake pedal ratio",
    minimum: 2,
    maximum: 8,
    help: "Movement of the pedal pad per movement of the push rod.",
  },
  {
    ...removablePart,
    assembly: "brakes",
    ...choice(
      { code: "limiting", label: "Pressure limiting valve", also: ["limiter", "limiting valve"] },
      { code: "reducing", label: "Pressure reducing valve", also: ["proportioning valve", "reducing valve"] },
      { code: "adjustable", label: "Adjustable valve", also: ["adjustable bias valve", "bias valve"] },
      { code: "loadSensing", label: "Load sensing valve", also: ["load apportioning"] },
    ),
    key: "brakes.rearValve",
    label: "Rear brake pressure valve",
    also: ["Brake bias valve", "Rear pressure valve"],
    help: "What holds back the pressure to the rear brakes.",
  },
  {
    ...item,
    ...choice(
      { code: "rubber", label: "Rubber", also: ["rubber hoses", "standard"] },
      { code: "braided", label: "Braided steel over plastic", also: ["braided steel", "stainless braided"] },
    ),
    key: "brakes.hose",
    label: "Brake hoses",
    also: ["Brake hose"],
    help: "What the flexible hoses are made of, all of them.",
  },
  {
    ...item,
    ...choice(
      { code: "dot3", label: "DOT 3" },
      { code: "dot4", label: "DOT 4" },
      { code: "dot51", label: "DOT 5.1", also: ["DOT5.1"] },
      { code: "dot5", label: "DOT 5 (silicone)", also: ["DOT 5", "silicone"] },
    ),
    key: "brakes.fluid",
    label: "Brake fluid",
    help: "Class of the fluid by FMVSS 116. Silicone fluid must not be mixed with the others.",
  },
];

/** Brakes: calipers, discs, pads, drums, and the hydraulics that feed them. */
export const brakes: readonly Characteristic[] = [
  ...caliperOf("front", "Front"),
  ...discAndPadsOf("front", "Front"),
  ...rearDrum,
  ...caliperOf("rear", "Rear"),
  ...discAndPadsOf("rear", "Rear"),
  ...hydraulics,
];
