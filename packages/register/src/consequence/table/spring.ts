import type { Binding, Feed } from "../binding";
import { type Axle, axles, group, of, result, sprungMass } from "./feed";

const coil = (axle: Axle): Feed =>
  group({ rate: of(`${axle}.spring.rate`), freeLength: of(`${axle}.spring.freeLength`) });

function ofAxle(axle: Axle, name: string): readonly Binding[] {
  return [
    {
      id: `${axle}.spring.ride`,
      title: `${name} springs`,
      computation: "spring.ride",
      mode: "each",
      inputs: {
        springRate: of(`${axle}.spring.rate`),
        motionRatio: of(`${axle}.spring.motionRatio`),
        sprungMass: { ...sprungMass(axle), optional: true },
      },
      figures: [
        { output: "wheelRate", label: `${name} wheel rate` },
        { output: "frequency", label: `${name} ride frequency` },
      ],
    },
    {
      id: `${axle}.spring.rideHeight`,
      title: `${name} ride height by the springs`,
      computation: "spring.rideHeight",
      mode: "change",
      inputs: {
        before: coil(axle),
        after: coil(axle),
        sprungMass: sprungMass(axle),
        motionRatio: of(`${axle}.spring.motionRatio`),
      },
      figures: [{ output: "heightChange", label: `${name} ride height` }],
    },
    {
      id: `${axle}.roll`,
      title: `${name} roll rate`,
      computation: "roll.axle",
      mode: "each",
      inputs: {
        track: of(`${axle}.track`),
        springWheelRate: result(`${axle}.spring.ride`, "wheelRate"),
        barWheelRate: result(`${axle}.bar.rate`, "wheelRate"),
      },
      figures: [
        { output: "rollRate", label: `${name} roll rate of springs and bar` },
        { output: "barShare", label: `The bar's share of the ${axle} roll rate` },
      ],
    },
  ];
}

export const springBindings = axles.flatMap(({ axle, name }) => ofAxle(axle, name));
