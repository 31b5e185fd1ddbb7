import type { Binding, Feed } from "../binding";
import { type Axle, assumed, axles, firstOf, group, of, perhaps } from "./feed";

const shape = (axle: Axle): Readonly<Record<string, Feed>> => ({
  diameter: of(`${axle}.antiRollBar.diameter`),
  bore: firstOf(
    { from: "characteristic", key: `${axle}.antiRollBar.bore`, absent: 0 },
    assumed(0, "bar taken as solid: no bore is recorded"),
  ),
});

function ofAxle(axle: Axle, name: string): readonly Binding[] {
  const bar = `${axle}.antiRollBar`;
  return [
    {
      id: `${axle}.bar.rate`,
      title: `${name} anti-roll bar`,
      computation: "bar.rate",
      mode: "each",
      inputs: {
        ...shape(axle),
        middleLength: of(`${bar}.middleLength`),
        leverLength: of(`${bar}.leverLength`),
        armLength: of(`${bar}.armLength`),
        motionRatio: perhaps(`${bar}.motionRatio`),
        track: perhaps(`${axle}.track`),
      },
      figures: [
        { output: "rate", label: `${name} bar at its end` },
        { output: "wheelRate", label: `${name} bar at the wheel` },
      ],
      notFitted: { key: `${bar}.diameter`, outputs: { rate: 0, wheelRate: 0, rollRate: 0 } },
    },
    {
      id: `${axle}.bar.ratio`,
      title: `${name} anti-roll bar`,
      computation: "bar.ratio",
      mode: "change",
      inputs: { before: group(shape(axle)), after: group(shape(axle)) },
      figures: [
        {
          output: "ratio",
          label: `${name} bar's stiffness, shape and mounting being the same`,
          only: "ratio",
        },
      ],
      unless: `${axle}.bar.rate`,
    },
  ];
}

export const barBindings = axles.flatMap(({ axle, name }) => ofAxle(axle, name));
