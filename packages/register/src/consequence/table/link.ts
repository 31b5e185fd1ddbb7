import type { Binding } from "../binding";
import { type Axle, assumed, axles, of } from "./feed";

/** A drop link carried off its bracket on a stack of spacers. */
const link = (axle: Axle, name: string): Binding => ({
  id: `${axle}.link.bolt`,
  title: `${name} drop link's bolt`,
  computation: "fastener.spacerStack",
  mode: "each",
  inputs: {
    thread: of(`${axle}.dropLink.boltThread`),
    grade: of(`${axle}.dropLink.boltGrade`),
    stackLength: of(`${axle}.dropLink.spacerStack`),
    eyeWidth: assumed(0.014, "link eye taken 14 mm wide"),
    section: assumed("thread", "thread reaching to the bracket"),
    force: assumed(1000, "link force taken as 1000 N"),
  },
  figures: [
    { output: "yieldForce", label: `Force at which the ${axle} link's bolt takes a set` },
    {
      output: "momentRatio",
      label: `Bending of the ${axle} link's bolt, against the link hard on its bracket`,
    },
    { output: "verdict", label: `${name} link's bolt at 1000 N` },
  ],
});

export const linkBindings: readonly Binding[] = axles.map(({ axle, name }) => link(axle, name));
