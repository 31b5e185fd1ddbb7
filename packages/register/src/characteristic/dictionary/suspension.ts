import type { Characteristic } from "../characteristic";
import { choice, count, grade, length, mass, part, rate, ratio, thread } from "./preset";

const names = { front: "Front", rear: "Rear" } as const;
const assemblyOf = { front: "frontSuspension", rear: "rearSuspension" } as const;
export type Axle = keyof typeof names;

/** The anti-roll bar of an axle and its drop links. */
export function antiRollBarOf(axle: Axle): readonly Characteristic[] {
  const name = names[axle];
  const bar = { ...part, assembly: assemblyOf[axle] } as const;
  return [
    {
      ...bar,
      ...choice(
        { code: "solid", label: "Solid bar", also: ["solid", "round bar"] },
        { code: "tube", label: "Tube", also: ["hollow", "tubular"] },
        { code: "blade", label: "Tube with blade arms", also: ["blade", "blades", "blade bar"] },
      ),
      key: `${axle}.antiRollBar.section`,
      label: `${name} anti-roll bar section`,
      help: "Whether the part of the bar that twists is solid or a tube. Tap it, or look at its ends.",
    },
    {
      ...bar,
      ...length,
      removable: true,
      key: `${axle}.antiRollBar.diameter`,
      label: `${name} anti-roll bar diameter`,
      also: [`${name} bar`, `${name} ARB`, `${name} roll bar diameter`, `${name} bar diameter`],
      minimum: 0.006,
      maximum: 0.05,
      help: "Outside diameter of the straight middle part, over bare metal: paint and plastic sleeves add up to a millimetre. Say not fitted where the car has no bar.",
    },
    {
      ...bar,
      ...length,
      key: `${axle}.antiRollBar.bore`,
      label: `${name} anti-roll bar bore`,
      minimum: 0.003,
      maximum: 0.045,
      removable: true,
      help: "Inside diameter of a tubular bar; none for a solid one. Leave empty where it is not known.",
    },
    {
      ...bar,
      ...length,
      key: `${axle}.antiRollBar.middleLength`,
      label: `${name} anti-roll bar middle length`,
      also: [`${name} anti-roll bar length`],
      minimum: 0.2,
      maximum: 1.6,
      help: "Length of the straight part that twists, from bend to bend along the centre line.",
    },
    {
      ...bar,
      ...length,
      key: `${axle}.antiRollBar.leverLength`,
      label: `${name} anti-roll bar lever`,
      also: [`${name} anti-roll bar lever length`, `${name} anti-roll bar arm`],
      minimum: 0.04,
      maximum: 0.6,
      help: "Distance of the drop link's joint from the axis of the middle part, square to that axis.",
    },
    {
      ...bar,
      ...ratio,
      key: `${axle}.antiRollBar.motionRatio`,
      label: `${name} anti-roll bar motion ratio`,
      minimum: 0.1,
      maximum: 1.5,
      help: "Movement of the bar's end per movement of the wheel centre, the wheels moving oppositely; usually below 1.",
    },
    {
      ...bar,
      ...length,
      key: `${axle}.antiRollBar.armLength`,
      label: `${name} anti-roll bar arm length`,
      minimum: 0.04,
      maximum: 0.7,
      help: "Length along the arm from the bend to the drop link's joint; more than the lever where the arm leans outwards.",
    },
    {
      ...bar,
      ...choice(
        { code: "springSteel", label: "Spring steel", also: ["steel", "spring steel bar"] },
        { code: "alloySteel", label: "Alloy steel tube", also: ["chrome molybdenum", "alloy steel"] },
        { code: "mildSteel", label: "Mild steel", also: ["mild steel bar"] },
      ),
      key: `${axle}.antiRollBar.material`,
      label: `${name} anti-roll bar material`,
      help: "What the bar is made of, if it is known. A home-made bar of mild steel takes a set and cracks at the bends.",
    },
    {
      ...bar,
      ...choice(
        { code: "rubber", label: "Rubber blocks", also: ["rubber", "rubber bushes"] },
        { code: "polyurethane", label: "Polyurethane blocks", also: ["poly", "polyurethane", "PU"] },
        { code: "plainBearing", label: "Plain bearing", also: ["acetal", "nylon", "bronze"] },
        { code: "spherical", label: "Spherical bearing", also: ["spherical"] },
      ),
      key: `${axle}.antiRollBar.mounting`,
      label: `${name} anti-roll bar mounting`,
      also: [`${name} anti-roll bar bush`],
      help: "What the bar turns in where it is held to the chassis.",
    },
    {
      ...bar,
      ...length,
      key: `${axle}.antiRollBar.bushBore`,
      label: `${name} anti-roll bar bush bore`,
      minimum: 0.005,
      maximum: 0.05,
      help: "Bore of the bush the bar turns in, free. A rubber one is up to a millimetre under the bar, and squeezed on.",
    },
    {
      ...bar,
      ...count,
      sided: true,
      setting: true,
      key: `${axle}.antiRollBar.position`,
      label: `${name} anti-roll bar position`,
      also: [`${name} bar position`, `${name} bar hole`],
      minimum: 1,
      maximum: 12,
      help: "Which hole or mark the drop link uses, counted from the end of the arm: 1 is the outermost, and softest.",
    },
    ...dropLinkOf(axle),
  ];
}

function dropLinkOf(axle: Axle): readonly Characteristic[] {
  const name = names[axle];
  const link = { ...part, assembly: assemblyOf[axle] } as const;
  return [
    {
      ...link,
      ...choice(
        { code: "rubberBush", label: "Rubber bush", also: ["rubber", "rubber bushes", "standard"] },
        { code: "polyurethaneBush", label: "Polyurethane bush", also: ["poly", "polyurethane", "PU"] },
        { code: "ballJoint", label: "Ball joint", also: ["balljoint", "ball joints"] },
        {
          code: "rodEnd",
          label: "Rod end",
          also: ["rod ends", "spherical", "spherical bearing", "adjustable rod end", "spherical joint"],
        },
      ),
      removable: true,
      key: `${axle}.dropLink.joint`,
      label: `${name} drop link joint`,
      also: [`${name} drop link`, `${name} anti-roll bar link`],
      help: "What the drop link between anti-roll bar and suspension ends in. Say not fitted where the bar has none.",
    },
    {
      ...link,
      ...length,
      sided: true,
      setting: true,
      key: `${axle}.dropLink.length`,
      label: `${name} drop link length`,
      minimum: 0.02,
      maximum: 0.6,
      help: "Between the centres of its joints, with the car on its wheels. An adjustable link is set so that the bar is free at ride height.",
    },
    {
      ...link,
      ...length,
      removable: true,
      key: `${axle}.dropLink.spacerStack`,
      label: `${name} drop link spacer stack`,
      also: [`${name} drop link spacers`],
      minimum: 0.0005,
      maximum: 0.12,
      help: "Height of the sleeves and washers that the link's bolt passes before it is held: the lever on which the bolt bends. Say not fitted where it passes none.",
    },
    {
      ...link,
      ...thread,
      key: `${axle}.dropLink.boltThread`,
      label: `${name} drop link bolt thread`,
      also: [`${name} drop link bolt`],
      help: "Thread of the bolt through the link's joint. Unified and metric threads of like size start in each other, and fail.",
    },
    {
      ...link,
      ...grade,
      key: `${axle}.dropLink.boltGrade`,
      label: `${name} drop link bolt grade`,
      help: "Strength class stamped on the bolt's head.",
    },
  ];
}

/** Springs, dampers, bump stops, track and unsprung mass of an axle. */
export function springingOf(axle: Axle): readonly Characteristic[] {
  const name = names[axle];
  const item = { ...part, assembly: assemblyOf[axle] } as const;
  return [
    {
      ...item,
      ...choice(
        { code: "coil", label: "Coil spring", also: ["coil", "coils", "coil over damper"] },
        { code: "leaf", label: "Leaf spring", also: ["leaf", "semi-elliptic", "cart spring"] },
        { code: "transverseLeaf", label: "Transverse leaf spring", also: ["transverse leaf"] },
        { code: "torsionBar", label: "Torsion bar", also: ["torsion"] },
        { code: "rubber", label: "Rubber spring", also: ["rubber cone"] },
      ),
      key: `${axle}.spring.kind`,
      label: `${name} spring`,
      also: [`${name} spring kind`, `${name} springs`],
      help: "What carries the car at this end.",
    },
    {
      ...item,
      ...rate,
      key: `${axle}.spring.rate`,
      label: `${name} spring rate`,
      also: [`${name} spring stiffness`],
      minimum: 2000,
      maximum: 300_000,
      help: "Force per movement of the spring itself, not at the wheel. As stamped or as measured; say which in the note.",
    },
    {
      ...item,
      ...length,
      key: `${axle}.spring.freeLength`,
      label: `${name} spring free length`,
      minimum: 0.05,
      maximum: 0.9,
      help: "Length of the coil spring off the car, without load.",
    },
    {
      ...item,
      ...ratio,
      key: `${axle}.spring.motionRatio`,
      label: `${name} spring motion ratio`,
      minimum: 0.1,
      maximum: 1.5,
      help: "Movement of the spring per movement of the wheel centre, usually below 1.",
    },
    {
      ...item,
      ...choice(
        {
          code: "twinTube",
          label: "Telescopic, twin tube",
          also: ["telescopic", "hydraulic", "oil", "twin tube"],
        },
        { code: "gas", label: "Telescopic, gas", also: ["gas", "monotube", "gas pressure"] },
        { code: "adjustable", label: "Telescopic, adjustable", also: ["adjustable", "adjustable damper"] },
        { code: "lever", label: "Lever arm", also: ["lever", "lever-arm"] },
      ),
      key: `${axle}.damper.kind`,
      label: `${name} damper`,
      also: [`${name} damper kind`, `${name} dampers`, `${name} shock absorber`],
      help: "Kind of damper fitted on both sides.",
    },
    {
      ...item,
      ...choice(
        { code: "rubberEye", label: "Rubber-bushed eye", also: ["eye", "rubber eye"] },
        { code: "sphericalEye", label: "Eye with a spherical bearing", also: ["spherical eye"] },
        { code: "pin", label: "Pin with rubber washers", also: ["pin", "stud"] },
        { code: "raised", label: "Raised bracket", also: ["raised mount"] },
      ),
      sided: true,
      removable: true,
      key: `${axle}.damper.lowerMount`,
      label: `${name} damper lower mount`,
      also: [`${name} lower damper mount`],
      help: "What holds the damper at its lower end.",
    },
    {
      ...item,
      ...count,
      sided: true,
      setting: true,
      key: `${axle}.damper.clicks`,
      label: `${name} damper clicks`,
      also: [`${name} damper setting`, `${name} damper bump clicks`],
      minimum: 0,
      maximum: 60,
      help: "Clicks from fully soft, bump and rebound together where the damper has one adjuster, bump where it has two.",
    },
    {
      ...item,
      ...count,
      sided: true,
      setting: true,
      key: `${axle}.damper.reboundClicks`,
      label: `${name} damper rebound clicks`,
      minimum: 0,
      maximum: 60,
      help: "Clicks of the rebound adjuster from fully soft, on dampers with two adjusters.",
    },
    {
      ...item,
      ...choice(
        { code: "rubber", label: "Rubber", also: ["rubber stop", "standard rubber"] },
        { code: "foam", label: "Polyurethane foam", also: ["foam", "progressive foam", "polyurethane"] },
      ),
      removable: true,
      key: `${axle}.bumpStop`,
      label: `${name} bump stop`,
      help: "What ends the travel in bump.",
    },
    {
      ...item,
      ...length,
      key: `${axle}.track`,
      label: `${name} track`,
      minimum: 0.9,
      maximum: 1.8,
      help: "Between the centres of the tyres' contact patches, car level at ride height.",
    },
    {
      ...item,
      ...mass,
      key: `${axle}.unsprungMass`,
      label: `${name} unsprung mass`,
      minimum: 10,
      maximum: 250,
      help: "What moves with the wheels of this axle, both sides together, with half of what spans to the chassis.",
    },
  ];
}
