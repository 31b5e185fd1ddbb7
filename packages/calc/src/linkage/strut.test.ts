import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Vector } from "../alignment/index";
import { CalcRefusal } from "../catalogue/refusal";
import { exampleStrut } from "./example";
import { mirrorHardpoints, readCorner, strut, sweepBump, sweepRack } from "./index";

const travel = fc.double({ min: -0.08, max: 0.08, noNaN: true });
const rackTravel = fc.double({ min: -0.05, max: 0.05, noNaN: true });
const apart = (a: Vector, b: Vector) => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

test("links keep their length and the top mount stays on the strut's axis, to a nanometre", () => {
  const corner = strut(exampleStrut);
  const { lowerArmFront, lowerArmRear, strutTop, strutFoot, tieRodInner } = exampleStrut;
  const lever = { y: strutTop.y - strutFoot.y, z: strutTop.z - strutFoot.z, x: strutTop.x - strutFoot.x };
  const size = Math.hypot(lever.x, lever.y, lever.z);
  fc.assert(
    fc.property(travel, rackTravel, (bump, rack) => {
      corner.moveTo(bump, rack);
      const now = corner.joints();
      const same = (a: Vector, b: Vector, c: Vector, d: Vector) =>
        expect(Math.abs(apart(a, b) - apart(c, d))).toBeLessThan(1e-9);
      same(now.lowerJoint, lowerArmFront, exampleStrut.lowerJoint, lowerArmFront);
      same(now.lowerJoint, lowerArmRear, exampleStrut.lowerJoint, lowerArmRear);
      same(now.tieRodOuter, now.tieRodInner, exampleStrut.tieRodOuter, tieRodInner);
      same(now.lowerJoint, now.tieRodOuter, exampleStrut.lowerJoint, exampleStrut.tieRodOuter);
      same(now.lowerJoint, now.strutFoot, exampleStrut.lowerJoint, strutFoot);
      same(now.wheelCentre, now.strutFoot, exampleStrut.wheelCentre, strutFoot);
      // Distance of the lower joint from the line foot to top is the upright's, so the line is still the strut's axis.
      const offset = (joint: Vector, foot: Vector, top: Vector, along: number) => {
        const [a, b, c] = [top.x - foot.x, top.y - foot.y, top.z - foot.z];
        const [p, q, r] = [joint.x - foot.x, joint.y - foot.y, joint.z - foot.z];
        return Math.hypot(b * r - c * q, c * p - a * r, a * q - b * p) / along;
      };
      expect(offset(now.lowerJoint, now.strutFoot, strutTop, apart(now.strutFoot, strutTop))).toBeCloseTo(
        offset(exampleStrut.lowerJoint, strutFoot, strutTop, size),
        9,
      );
    }),
  );
});

test("spring and damper left out act along the strut; ratios and gains equal finite differences", () => {
  const corner = strut(exampleStrut);
  const step = 1e-5;
  fc.assert(
    fc.property(travel, rackTravel, (bump, rack) => {
      const [before, here, after] = sweepBump(
        corner,
        { from: bump - step, to: bump + step, positions: 3 },
        rack,
      );
      if (before === undefined || here === undefined || after === undefined)
        throw new Error("three readings wanted");
      const rate = (a: number | undefined, b: number | undefined) =>
        ((b ?? Number.NaN) - (a ?? Number.NaN)) / (2 * step);
      expect(here.spring).toEqual(here.damper);
      expect(here.spring?.ratio).toBeCloseTo(-rate(before.spring?.length, after.spring?.length), 6);
      expect(here.camberGain).toBeCloseTo(rate(before.camber, after.camber), 6);
      expect(here.toeGain).toBeCloseTo(rate(before.toeIn, after.toeIn), 6);
      expect(here.trackGain).toBeCloseTo(rate(before.trackChange, after.trackChange), 6);
      const [one, two, three] = sweepRack(corner, { from: rack - step, to: rack + step, positions: 3 }, bump);
      expect(two?.steerGain).toBeCloseTo(-rate(one?.toeIn, three?.toeIn), 5);
    }),
  );
});

test("the mirrored corner shows the same angles", () => {
  const left = strut(exampleStrut);
  const right = strut(mirrorHardpoints(exampleStrut));
  fc.assert(
    fc.property(travel, rackTravel, (bump, rack) => {
      left.moveTo(bump, rack);
      right.moveTo(bump, -rack);
      const l = readCorner(left);
      const r = readCorner(right);
      for (const name of [
        "camber",
        "toeIn",
        "castor",
        "kingpin",
        "scrub",
        "trail",
        "trackChange",
        "rollCentreHeight",
      ] as const) {
        expect(r[name]).toBeCloseTo(l[name] ?? Number.NaN, 9);
      }
    }),
  );
});

test("the instant centre is where the lower arm's line meets the line through the top square to the strut", () => {
  // A plane case whose construction can be drawn: source as KIN-02, constructions of Gillespie ch. 7, from memory.
  const corner = strut({
    ...exampleStrut,
    toeIn: 0,
    lowerArmFront: { x: 0.1, y: 0.3, z: 0.2 },
    lowerArmRear: { x: -0.1, y: 0.3, z: 0.2 },
    lowerJoint: { x: 0, y: 0.62, z: 0.18 },
    strutTop: { x: 0, y: 0.54, z: 0.79 },
    strutFoot: { x: 0, y: 0.6, z: 0.33 },
  });
  const { instantCentre, rollCentreHeight, contact } = readCorner(corner);
  // Lower arm: z = 0.2 − (y − 0.3)/16. Square to the strut through the top: z = 0.79 + (y − 0.54)·(0.06/0.46).
  const y = (0.2 + 0.3 / 16 - 0.79 + (0.54 * 0.06) / 0.46) / (0.06 / 0.46 + 1 / 16);
  const z = 0.2 - (y - 0.3) / 16;
  expect(instantCentre?.y).toBeCloseTo(y, 10);
  expect(instantCentre?.z).toBeCloseTo(z, 10);
  expect(rollCentreHeight).toBeCloseTo((contact.y * (z - contact.z)) / (contact.y - y), 10);
});

describe("refusals", () => {
  test("out of reach, with the travel that can be reached", () => {
    const corner = strut(exampleStrut);
    expect(() => corner.moveTo(0.45)).toThrow(
      /cannot reach 450\.0 mm of travel: it reaches -\d+\.\d mm to \d+\.\d mm there/,
    );
    expect(() => corner.moveTo(-0.45)).toThrow(CalcRefusal);
  });

  test.each<[Partial<typeof exampleStrut>, string]>([
    [{ strutFoot: exampleStrut.strutTop }, "its top and its foot lie on the same spot"],
    [{ strutTop: { x: 0, y: -0.6, z: 0.5 } }, "more than 60° from upright"],
    [{ lowerJoint: { x: 0, y: 0.55, z: 0.9 } }, "its top does not lie above the lower joint"],
  ])("%o", (change, words) => {
    expect(() => strut({ ...exampleStrut, ...change })).toThrow(words);
  });
});
