import type { Characteristic } from "../characteristic";
import { choice, length, mass, part, text } from "./preset";

const item = { ...part, assembly: "chassis" } as const;

/** Chassis: kind, finish, repairs, wheelbase, mass. */
export const chassis: readonly Characteristic[] = [
  {
    ...item,
    ...choice(
      { code: "backbone", label: "Backbone", also: ["steel backbone"] },
      { code: "ladder", label: "Ladder frame", also: ["ladder", "perimeter"] },
      { code: "spaceFrame", label: "Space frame", also: ["tubular", "multi-tube", "spaceframe"] },
      { code: "unitary", label: "Unitary", also: ["monocoque"] },
    ),
    key: "chassis.kind",
    label: "Chassis kind",
    help: "How the chassis is built.",
  },
  {
    ...item,
    ...choice(
      { code: "original", label: "Original", also: ["first", "as built"] },
      { code: "repaired", label: "Original, repaired", also: ["repaired", "welded", "plated"] },
      {
        code: "replacedWorks",
        label: "Replaced by the works",
        also: ["works replacement", "service chassis"],
      },
      {
        code: "replacedRemade",
        label: "Replaced by a remade one",
        also: ["remade", "replica chassis", "new chassis"],
      },
    ),
    key: "chassis.originality",
    label: "Chassis originality",
    help: "Whether this is the chassis the car left the works with.",
  },
  {
    ...item,
    ...choice(
      { code: "paint", label: "Paint", also: ["painted"] },
      { code: "powder", label: "Powder coating", also: ["powder coated", "powder coat"] },
      { code: "zinc", label: "Hot-dip zinc", also: ["galvanised", "galvanized", "zinc"] },
      { code: "epoxy", label: "Epoxy primer and paint", also: ["epoxy"] },
    ),
    key: "chassis.finish",
    label: "Chassis finish",
    help: "What protects the steel. Coatings hide cracks; zinc closes the drain holes of tubes.",
  },
  {
    ...item,
    ...length,
    key: "chassis.wheelbase",
    label: "Wheelbase",
    minimum: 1.5,
    maximum: 3.5,
    help: "Between the wheel centres of one side, car level, straight ahead.",
  },
  {
    ...item,
    ...mass,
    key: "chassis.kerbMass",
    label: "Kerb mass",
    also: ["Kerb weight", "Weight", "Mass"],
    minimum: 300,
    maximum: 2500,
    help: "Ready for the road with full tank, without people and luggage.",
  },
  {
    ...item,
    ...length,
    key: "chassis.centreOfGravityHeight",
    label: "Centre of gravity height",
    minimum: 0.2,
    maximum: 0.9,
    help: "Above the ground at ride height, as measured with a raised axle.",
  },
  {
    ...item,
    ...text,
    key: "chassis.bracing",
    label: "Chassis bracing",
    removable: true,
    help: "Tubes or plates added to the works' chassis, and how they are fixed.",
  },
];
