import { z } from "zod";
import { defineComputation } from "../catalogue/computation";
import { quantity } from "../catalogue/field";
import { worked } from "../spring/worked";
import { readAxle } from "./axle";
import { exampleWishbone } from "./example";
import { linkageSources, rigidValidity } from "./field";
import { assemblePair, cornerLayout, steeredLayout } from "./layout";
import { readAckermann } from "./steer";

const rack = quantity("length", {
  label: "Travel of the rack, to the left",
  min: -0.5,
  max: 0.5,
  unit: "mm",
}).prefault("0 mm");
/** Field of the mean travel of an axle. */
export const heaveField = quantity("length", {
  label: "Mean travel of both wheel centres",
  help: "Up from the design position",
  min: -0.5,
  max: 0.5,
  unit: "mm",
}).prefault("0 mm");
/** Field of the car's roll. */
export const rollField = quantity("angle", {
  label: "Roll of the car",
  help: "Against the ground, positive with the left side up, as in a left-hand bend",
  min: -0.5,
  max: 0.5,
  unit: "°",
}).prefault("0°");

const { side: _side, spring: _spring, damper: _damper, bar: _bar, ...exampleCorner } = exampleWishbone;
const degrees = { dimension: "angle", unit: "°", decimals: 3 } as const;
const minutes = { dimension: "angle", unit: "'", decimals: 2 } as const;
const millimetres = { dimension: "length", unit: "mm", decimals: 2 } as const;

/** Catalogue entry `linkage.axleRoll`. */
export const axleRollComputation = defineComputation({
  name: "linkage.axleRoll",
  title: "Axle with independent suspension in roll",
  summary:
    "Camber to the ground, toe, track and roll centre of both wheels when the car rolls, heaves and steers.",
  input: z.object({ corner: cornerLayout, roll: rollField, heave: heaveField, rack }),
  outputs: {
    leftCamberToGround: {
      how: ["γ_lg", "camber of the left wheel against the normal of the ground"],
      label: "Camber to the ground, left",
      ...degrees,
    },
    rightCamberToGround: {
      how: ["γ_rg", "as above, of the right wheel"],
      label: "Camber to the ground, right",
      ...degrees,
    },
    leftCamber: {
      how: ["γ_l", "−asin n_z in the car's own axes"],
      label: "Camber to the car, left",
      ...degrees,
    },
    rightCamber: {
      how: ["γ_r", "as above, of the right wheel"],
      label: "Camber to the car, right",
      ...degrees,
    },
    leftToeIn: { how: ["θ_l", "atan2(n_x, s·n_y) in the car's own axes"], label: "Toe-in, left", ...minutes },
    rightToeIn: { how: ["θ_r", "as above, of the right wheel"], label: "Toe-in, right", ...minutes },
    totalToe: { how: ["θ_t", "toe-in of both wheels together"], label: "Total toe-in", ...minutes },
    track: {
      how: ["t", "between both contact points, along the ground"],
      label: "Track along the ground",
      ...millimetres,
    },
    leftBump: {
      how: ["z_l", "rise of the left wheel centre that puts the car to this heave and roll"],
      label: "Travel of the left wheel centre",
      ...millimetres,
    },
    rightBump: {
      how: ["z_r", "as above, of the right wheel"],
      label: "Travel of the right wheel centre",
      ...millimetres,
    },
    rollCentreY: {
      how: ["y_RC", "where the lines from both contact points to their instant centres meet"],
      label: "Roll centre, to the left of the centre plane",
      ...millimetres,
    },
    rollCentreHeight: {
      how: ["z_RC", "as above, over the ground"],
      label: "Roll centre, height over the ground",
      ...millimetres,
    },
  },
  source: linkageSources,
  validity: `${rigidValidity} The car is alike on both sides; in roll the wheel centres travel equally and oppositely about the mean.`,
  example: { corner: { layout: "double wishbone", ...exampleCorner }, roll: "3°", heave: "0 mm" },
  compute({ corner, ...position }) {
    const { left, right, ...axle } = readAxle(assemblePair(corner), position);
    return {
      outputs: {
        leftCamberToGround: axle.leftCamberToGround,
        rightCamberToGround: axle.rightCamberToGround,
        leftCamber: left.camber,
        rightCamber: right.camber,
        leftToeIn: left.toeIn,
        rightToeIn: right.toeIn,
        totalToe: axle.totalToe,
        track: axle.track,
        leftBump: left.bump,
        rightBump: right.bump,
        rollCentreY: axle.rollCentre?.y ?? null,
        rollCentreHeight: axle.rollCentre?.height ?? null,
      },
      working: () =>
        worked([
          ["φ", "Roll", "given", position.roll, "angle", "°", "left side up is positive"],
          ["z", "Mean travel", "given", position.heave, "length", "mm"],
          ["s", "Travel of the rack", "given", position.rack, "length", "mm"],
          [
            "h_l",
            "Left line at the centre plane",
            "contact point to instant centre",
            left.rollCentreHeight,
            "length",
            "mm",
            "height over the ground",
          ],
          [
            "h_r",
            "Right line at the centre plane",
            "contact point to instant centre",
            right.rollCentreHeight,
            "length",
            "mm",
            "height over the ground",
          ],
        ]),
      warnings:
        axle.rollCentre === null
          ? ["The lines of both wheels do not cross, so that there is no roll centre."]
          : [],
    };
  },
});

/** Catalogue entry `linkage.ackermann`. */
export const linkageAckermannComputation = defineComputation({
  name: "linkage.ackermann",
  title: "Steering of an axle from its hardpoints",
  summary:
    "Angles of the inner and the outer wheel at a rack travel, against the ideal, and the turn they make.",
  input: z.object({
    corner: steeredLayout,
    rack: quantity("length", { label: "Travel of the rack, to the left", min: -0.5, max: 0.5, unit: "mm" }),
    heave: heaveField,
    wheelbase: quantity("length", { label: "Wheelbase", above: 0, max: 10, unit: "mm" }),
  }),
  outputs: {
    inner: {
      how: ["δ_i", "heading of the wheel inside the bend, from straight ahead"],
      label: "Angle of the inner wheel",
      ...degrees,
    },
    outer: { how: ["δ_o", "as above, of the wheel outside"], label: "Angle of the outer wheel", ...degrees },
    idealOuter: {
      how: ["δ_A", "acot(cot δ_i + w/L), w between the steering axes at the ground"],
      label: "Ideal angle of the outer wheel",
      ...degrees,
    },
    ratio: {
      how: ["A", "(δ_i − δ_o)/(δ_i − δ_A)"],
      label: "Ackermann (1 ideal, 0 parallel)",
      dimension: "ratio",
      decimals: 3,
    },
    radius: {
      how: ["R", "middle of the rear axle to the point about which both wheels would roll"],
      label: "Turn radius, middle of the rear axle",
      dimension: "length",
      unit: "m",
      decimals: 2,
    },
    kingpinTrack: { label: "Between the steering axes at the ground", ...millimetres },
  },
  source: [
    ...linkageSources,
    { title: "ISO 8855:2011, Ackermann geometry", locus: "7.1.9", status: "read-formula" },
  ],
  validity: `${rigidValidity} The car is alike on both sides and stands level. Headings are whole, static toe included. Slow turns without slip.`,
  example: { corner: { layout: "double wishbone", ...exampleCorner }, rack: "45 mm", wheelbase: "2300 mm" },
  compute({ corner, ...position }) {
    const read = readAckermann(assemblePair(corner), position);
    const { inner, outer, idealOuter, ratio, turnRadius: radius, kingpinTrack } = read;
    return {
      outputs: { inner, outer, idealOuter, ratio, radius, kingpinTrack },
      working: () =>
        worked([
          ["s", "Travel of the rack", "given", position.rack, "length", "mm"],
          ["L", "Wheelbase", "given", position.wheelbase, "length", "mm"],
          ["w", "Between the steering axes at the ground", "straight ahead", kingpinTrack, "length", "mm"],
          ["δ_a", "Ideal outer angle", "cot δ_a = cot δ_i + w/L", idealOuter, "angle", "°"],
          ["A", "Ackermann", "(δ_i − δ_o)/(δ_i − δ_a)", ratio, "ratio"],
          ["R", "Turn radius", "L/tan δ_i + w/2", radius, "length", "m"],
        ]),
      warnings: [],
    };
  },
});
