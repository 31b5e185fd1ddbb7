import type { Binding, Feed } from "../binding";
import { type Axle, assumed, axleMass, firstOf, group, of, result, rollCentre, wheelRadius } from "./feed";

const axle = (which: Axle, rollCentreHeight: Feed): Feed =>
  group({
    track: of(`${which}.track`),
    mass: axleMass(which),
    unsprungMass: of(`${which}.unsprungMass`),
    unsprungHeight: wheelRadius(which),
    rollCentreHeight,
    springWheelRate: result(`${which}.spring.ride`, "wheelRate"),
    barWheelRate: result(`${which}.bar.rate`, "wheelRate"),
  });

/** Roll of the whole car: by stiffness alone, and with masses and heights where they are known. */
export const rollBindings: readonly Binding[] = [
  {
    id: "roll.share",
    title: "Balance in roll",
    computation: "roll.share",
    mode: "each",
    inputs: {
      frontRollRate: result("front.roll", "rollRate"),
      rearRollRate: result("rear.roll", "rollRate"),
    },
    figures: [
      { output: "frontShare", label: "Front share of the roll rate" },
      { output: "rearShare", label: "Rear share of the roll rate" },
      { output: "total", label: "Roll rate of the car" },
    ],
  },
  {
    id: "roll.cornering",
    title: "Roll and load transfer",
    computation: "roll.cornering",
    mode: "each",
    inputs: {
      front: axle("front", firstOf(...rollCentre("front"))),
      // A live axle's links have no hardpoints in the dictionary.
      rear: axle(
        "rear",
        firstOf(...rollCentre("rear"), assumed(0.12, "rear roll centre taken 120 mm above the ground")),
      ),
      cgHeight: of("chassis.centreOfGravityHeight"),
      acceleration: assumed(0.6 * 9.80665, "cornering at 0.6 g"),
    },
    figures: [
      { output: "angle", label: "Roll angle at 0.6 g" },
      { output: "gradient", label: "Roll gradient" },
      { output: "frontTransferShare", label: "Front share of the load transfer" },
    ],
  },
];
