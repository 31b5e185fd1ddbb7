import type { Binding, Feed } from "../binding";
import { assumed, firstOf, group, of, wheelRadius } from "./feed";

const point = (name: string): Feed =>
  group({
    x: of(`front.hardpoint.${name}.x`, "left"),
    y: of(`front.hardpoint.${name}.y`, "left"),
    z: of(`front.hardpoint.${name}.z`, "left"),
  });

const halfTrack: Feed = {
  from: "values",
  of: [{ key: "front.track" }],
  says: "half of the front track",
  value: ([track = 0]) => track / 2,
};

/** The front suspension's geometry at ride height, from its hardpoints. */
export const linkageBindings: readonly Binding[] = [
  {
    id: "front.linkage",
    title: "Front suspension's geometry",
    computation: "linkage.doubleWishbone",
    mode: "each",
    inputs: {
      axle: assumed("front", "the front axle"),
      wheelCentre: group({
        x: assumed(0, "wheel centre on the line between the front hubs"),
        y: halfTrack,
        z: wheelRadius("front"),
      }),
      loadedRadius: wheelRadius("front"),
      camber: firstOf(of("front.camber", "left"), assumed(0, "camber at ride height taken as nought")),
      toeIn: firstOf(of("front.toe", "left"), assumed(0, "toe at ride height taken as nought")),
      lowerArmFront: point("lowerArmFront"),
      lowerArmRear: point("lowerArmRear"),
      lowerJoint: point("lowerJoint"),
      upperArmFront: point("upperArmFront"),
      upperArmRear: point("upperArmRear"),
      upperJoint: point("upperJoint"),
      tieRodInner: point("tieRodInner"),
      tieRodOuter: point("tieRodOuter"),
    },
    figures: [
      { output: "castor", label: "Castor by the hardpoints" },
      { output: "camberGain", label: "Camber change per travel" },
      { output: "bumpSteer", label: "Bump steer" },
      { output: "rollCentreHeight", label: "Front roll-centre height" },
      { output: "scrub", label: "Scrub radius" },
      { output: "trail", label: "Trail" },
    ],
  },
];
