import type { Characteristic } from "../characteristic";
import { choice, date, length, part, removablePart, sidedSetting, text, thread, tyre, wheel } from "./preset";
import type { Axle } from "./suspension";

const assembly = "wheels";
const item = { ...part, assembly } as const;

function endOf(axle: Axle): readonly Characteristic[] {
  const name = axle === "front" ? "Front" : "Rear";
  return [
    {
      ...item,
      ...wheel,
      key: `wheels.${axle}.size`,
      label: `${name} wheel size`,
      also: [`${name} wheels`, `${name} rim`, `${name} wheel`],
      help: "Width, flange, diameter and offset as stamped: 5½J x 14 ET 20.",
    },
    {
      ...removablePart,
      ...length,
      assembly,
      key: `wheels.${axle}.spacer`,
      label: `${name} wheel spacer`,
      also: [`${name} spacers`],
      minimum: 0.001,
      maximum: 0.08,
      help: "Thickness of a spacer between hub and wheel, per side. Say not fitted where there is none.",
    },
    {
      ...item,
      ...tyre,
      key: `tyres.${axle}.size`,
      label: `${name} tyre size`,
      also: [`${name} tyres`, `${name} tyre`],
      help: "As moulded on the side: 175/70 R 13 82T, 165 SR 13, 5.20-13.",
    },
    {
      ...item,
      ...text,
      key: `tyres.${axle}.pattern`,
      label: `${name} tyre pattern`,
      also: [`${name} tyre make`],
      help: "Make and pattern as moulded on the side.",
    },
    {
      ...sidedSetting,
      ...length,
      assembly,
      key: `tyres.${axle}.treadDepth`,
      label: `${name} tyre tread depth`,
      also: [`${name} tread depth`],
      minimum: 0,
      maximum: 0.015,
      help: "Least depth across the middle three quarters of the tread.",
    },
    {
      ...item,
      ...date,
      sided: true,
      key: `tyres.${axle}.manufactured`,
      label: `${name} tyre manufacture date`,
      also: [`${name} tyre age`, `${name} tyre date`],
      help: "From the four figures of the date code, week and year: DOT 1219 is week 12 of 2019.",
    },
  ];
}

/** Wheels and tyres, studs and nuts. */
export const wheels: readonly Characteristic[] = [
  {
    ...item,
    ...choice(
      { code: "pressedSteel", label: "Pressed steel", also: ["steel", "steel wheels", "disc wheels"] },
      { code: "wire", label: "Wire", also: ["wire wheels", "spoked"] },
      { code: "castAlloy", label: "Cast alloy", also: ["alloy", "alloys", "cast aluminium", "magnesium"] },
      { code: "forgedAlloy", label: "Forged alloy", also: ["forged"] },
      { code: "splitRim", label: "Split rim", also: ["split rims", "three piece", "modular"] },
    ),
    key: "wheels.kind",
    label: "Wheel kind",
    also: ["Wheels", "Road wheels"],
    help: "How the wheels are made.",
  },
  ...endOf("front"),
  ...endOf("rear"),
  {
    ...item,
    ...length,
    key: "wheels.boltCircle",
    label: "Wheel bolt circle",
    also: ["Bolt circle", "PCD", "Wheel PCD"],
    minimum: 0.08,
    maximum: 0.18,
    help: "Diameter of the circle through the studs. Circles of 4 in and of 100 mm differ by 1.6 mm and must not be mixed.",
  },
  {
    ...item,
    ...thread,
    key: "wheels.stud.thread",
    label: "Wheel stud thread",
    also: ["Wheel studs", "Wheel stud", "Wheel nut thread"],
    help: "Thread of studs or bolts and nuts; the same at all four corners, or say so in the note.",
  },
  {
    ...item,
    ...length,
    key: "wheels.stud.engagement",
    label: "Wheel stud engagement",
    minimum: 0.004,
    maximum: 0.05,
    help: "Length of thread inside the nut when it is tight, least of all: at least the thread's diameter in steel.",
  },
  {
    ...item,
    ...choice(
      { code: "cone60", label: "60° cone", also: ["cone", "conical", "tapered", "60 degree"] },
      { code: "ball", label: "Ball seat", also: ["radius", "spherical"] },
      { code: "flat", label: "Flat with sleeve", also: ["sleeve", "shank"] },
      { code: "centreLock", label: "Centre lock", also: ["spinner", "knock-on", "knock off", "splined hub"] },
    ),
    key: "wheels.nutSeat",
    label: "Wheel nut seat",
    help: "Shape of the nuts' seat; it must be the wheel's.",
  },
];
