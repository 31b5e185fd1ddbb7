import { expect, test } from "vitest";
import { armTrace, finite, meet } from "./front-view";
import { doubleWishbone, readCorner, swingAxle, type WishboneHardpoints } from "./index";

/**
 * Constructed golden cases. Source of the constructions: Gillespie (1992) ch. 7, Dixon (2009) ch. 7 to 10, Milliken
 * (1995) ch. 17, from memory; no printed numbers used. KIN-05 and KIN-06 were made with two independent solvers.
 */
const degree = Math.PI / 180;
const point = (x: number, y: number, z: number) => ({ x: x / 1000, y: y / 1000, z: z / 1000 });

/** The plane case of KIN-02 to KIN-06; a tie rod in the lower arm's plane and as long keeps the wheel from steering. */
const planar: WishboneHardpoints = {
  side: "left",
  lowerArmFront: point(120, 260, 190),
  lowerArmRear: point(-120, 260, 190),
  lowerJoint: point(0, 640, 170),
  upperArmFront: point(100, 330, 420),
  upperArmRear: point(-100, 330, 420),
  upperJoint: point(0, 610, 440),
  tieRodInner: point(-130, 260, 190),
  tieRodOuter: point(-130, 640, 170),
  wheelCentre: point(0, 690, 290),
  camber: 0,
  toeIn: 0,
  loadedRadius: 0.29,
};

test("KIN-02: front-view swing arm of 2243.6364 mm", () => {
  const { swingArm, instantCentre } = readCorner(doubleWishbone(planar));
  expect(Math.abs((swingArm ?? 0) * 1000 - 2243.6364)).toBeLessThanOrEqual(1e-4);
  expect((instantCentre?.y ?? 0) * 1000).toBeCloseTo(-1553.6363636, 6);
  expect((instantCentre?.z ?? 0) * 1000).toBeCloseTo(285.45454545, 6);
});

test("KIN-03: geometric roll centre at 87.79 mm", () => {
  const { rollCentreHeight } = readCorner(doubleWishbone(planar));
  expect(Math.abs((rollCentreHeight ?? 0) * 1000 - 87.79)).toBeLessThanOrEqual(0.01);
});

test.each([
  [25, -0.69237, -0.9532],
  [50, -1.49863, -3.7159],
  [-25, 0.58643, -0.8573],
  [-50, 1.07061, -3.557],
])("KIN-05 and KIN-06: at %d mm camber is %d° and the wheel centre %d mm out", (bump, camber, lateral) => {
  const corner = doubleWishbone(planar);
  corner.moveTo(bump / 1000);
  const reading = readCorner(corner);
  expect(Math.abs(reading.camber / degree - camber)).toBeLessThanOrEqual(2e-5);
  expect(Math.abs((reading.wheelCentre.y - 0.69) * 1000 - lateral)).toBeLessThanOrEqual(2e-4);
  expect(reading.toeIn).toBeCloseTo(0, 12);
});

test.each([50, -50])("KIN-08: equal parallel arms of 350 mm narrow by 3.5899 mm at %d mm", (bump) => {
  const parallel: WishboneHardpoints = {
    ...planar,
    lowerArmFront: point(120, 290, 170),
    lowerArmRear: point(-120, 290, 170),
    upperArmFront: point(100, 290, 440),
    upperArmRear: point(-100, 290, 440),
    upperJoint: point(0, 640, 440),
    tieRodInner: point(-130, 290, 170),
  };
  const corner = doubleWishbone(parallel);
  corner.moveTo(bump / 1000);
  const { trackChange, camber, instantCentre, swingArm } = readCorner(corner);
  expect(Math.abs(trackChange * 1000 - -3.5899)).toBeLessThanOrEqual(5e-4);
  expect(trackChange).toBeCloseTo(Math.sqrt(0.35 ** 2 - 0.05 ** 2) - 0.35, 12);
  expect(camber).toBeCloseTo(0, 12);
  expect([instantCentre, swingArm]).toEqual([null, null]);
});

test("KIN-09: an inch of travel on a 1500 mm swing arm changes camber by 0.97°", () => {
  const wheel = {
    side: "left" as const,
    wheelCentre: point(0, 690, 290),
    camber: 0,
    toeIn: 0,
    loadedRadius: 0.29,
  };
  const corner = swingAxle({ ...wheel, joint: point(0, -810, 290), radiusArm: point(300, -810, 290) });
  corner.moveTo(-0.0254);
  expect(Math.abs(readCorner(corner).camber / degree - 0.97)).toBeLessThanOrEqual(0.001);
});

test("KIN-11: arms that meet outboard of the wheel do so at (2000, 300), and the swing arm is negative", () => {
  const arm = (inner: [number, number], outer: [number, number]) => ({
    front: point(100, ...inner),
    rear: point(-100, ...inner),
    outer: point(0, ...outer),
  });
  const centre = finite(meet(armTrace(arm([0, 100], [600, 160]), 0), armTrace(arm([0, 500], [600, 440]), 0)));
  expect(Math.abs((centre?.y ?? 0) * 1000 - 2000)).toBeLessThanOrEqual(1e-6);
  expect(Math.abs((centre?.z ?? 0) * 1000 - 300)).toBeLessThanOrEqual(1e-6);

  const outward = doubleWishbone({
    ...planar,
    lowerArmFront: point(120, 1e-9, 100),
    lowerArmRear: point(-120, 1e-9, 100),
    lowerJoint: point(0, 600, 160),
    upperArmFront: point(100, 1e-9, 500),
    upperArmRear: point(-100, 1e-9, 500),
    upperJoint: point(0, 600, 440),
  });
  expect(readCorner(outward).swingArm).toBeCloseTo(0.69 - 2, 6);
});
