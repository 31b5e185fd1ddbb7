import { describe, expect, test } from "vitest";
import {
  ackermannOuter,
  ackermannSteer,
  angleFromRim,
  camberOf,
  castorFromSwing,
  castorOf,
  distanceAtRim,
  kingpinOf,
  spinAxisOf,
  steeringAxisFromSwing,
  steerOf,
  thrustAngle,
  toeInOf,
  totalDistanceAtRim,
  totalToe,
  totalToeFromRim,
} from "./index";

const degree = Math.PI / 180;
const minute = degree / 60;
const mm = 1e-3;
const inch = 0.0254;

describe("rules of ISO 8855:2011", () => {
  test("ALI-01 (7.1.6, read): toe-in is positive", () => {
    // The left wheel's front edge turned in (to the right) turns its outboard axis forward.
    expect(toeInOf({ x: 0.1, y: 1, z: 0 }, "left")).toBeGreaterThan(0);
    expect(toeInOf({ x: 0.1, y: -1, z: 0 }, "right")).toBeGreaterThan(0);
  });

  test("ALI-03 (7.1.8, read): a turn to the left is positive, at the wheels as at the steering wheel", () => {
    // Both wheels turned 5° to the left about z: their outboard axes turn with them.
    const [c, s] = [Math.cos(5 * degree), Math.sin(5 * degree)];
    expect(steerOf(toeInOf({ x: -s, y: c, z: 0 }, "left"), "left")).toBeCloseTo(5 * degree, 12);
    expect(steerOf(toeInOf({ x: s, y: -c, z: 0 }, "right"), "right")).toBeCloseTo(5 * degree, 12);
  });
  test("ALI-02 (7.1.7, read): total toe is the sum of the two", () => {
    expect(totalToe({ left: 3 * minute, right: -1 * minute })).toBeCloseTo(2 * minute, 15);
  });
  test("ALI-04 (from memory): camber is positive when the top leans outward", () => {
    expect(camberOf({ x: 0, y: 1, z: -0.1 })).toBeGreaterThan(0);
    expect(camberOf({ x: 0, y: -1, z: -0.1 })).toBeGreaterThan(0);
  });
  test("ALI-05 (from memory): castor positive with the top rearward, kingpin with the top inboard", () => {
    expect(castorOf({ x: -0.1, y: 0, z: 1 })).toBeGreaterThan(0);
    expect(kingpinOf({ x: 0, y: -0.1, z: 1 }, "left")).toBeGreaterThan(0);
    expect(kingpinOf({ x: 0, y: 0.1, z: 1 }, "right")).toBeGreaterThan(0);
  });
});

interface Row {
  readonly id: string;
  readonly value: number;
  readonly expected: number;
  readonly tolerance: number;
  readonly source: string;
}

const plan = { wheelbase: 2.4, kingpinTrack: 1.3 };
const swing = { outward: 2.3308 * degree, inward: -1.1032 * degree, steer: 20 * degree };
const firstPrinciples = "first principles (geometry), from memory";

const rows: readonly Row[] = [
  {
    id: "ALI-06 toe of 1° over 381 mm, mm",
    value: distanceAtRim(degree, 381 * mm) / mm,
    expected: 6.649,
    tolerance: 0.001,
    source: firstPrinciples,
  },
  {
    id: "ALI-07 2 mm over 381 mm, minutes",
    value: angleFromRim(2 * mm, 381 * mm) / minute,
    expected: 18.05,
    tolerance: 0.01,
    source: firstPrinciples,
  },
  {
    id: "ALI-07 the same split equally, minutes per wheel",
    value: totalToeFromRim(2 * mm, 381 * mm) / 2 / minute,
    expected: 9.02,
    tolerance: 0.01,
    source: firstPrinciples,
  },
  {
    id: "ALI-08 1/16 in over 13 in, minutes",
    value: totalToeFromRim(inch / 16, 13 * inch) / minute,
    expected: 16.53,
    tolerance: 0.01,
    source: firstPrinciples,
  },
  {
    id: "ALI-10 camber of 1° over 330.2 mm, mm",
    value: distanceAtRim(degree, 330.2 * mm) / mm,
    expected: 5.763,
    tolerance: 0.001,
    source: firstPrinciples,
  },
  {
    id: "ALI-11 Ackermann outer angle, degrees",
    value: ackermannOuter(30 * degree, plan) / degree,
    expected: 23.74,
    tolerance: 0.01,
    source: "engineering exam bank: fundamental steering equation; formula read, numbers own",
  },
  {
    id: "ALI-12 outer angle from the turn centre, degrees",
    value: outerFromTurnCentre(30 * degree) / degree,
    expected: 23.7403,
    tolerance: 0.0001,
    source: "ISO 8855:2011, 7.1.9: definition read, geometry own",
  },
  {
    id: "ALI-13 steer angle of a turn, degrees",
    value: ackermannSteer(2.4, 10) / degree,
    expected: 13.496,
    tolerance: 0.001,
    source: "glossary: Ackermann steer angle; definition read, numbers own",
  },
  {
    id: "ALI-14 castor by the gauge formula, degrees",
    value: castorFromSwing(swing) / degree,
    expected: 5,
    tolerance: 0.03,
    source: firstPrinciples,
  },
  {
    id: "ALI-15 camber steered 20° outward, degrees",
    value: camberAtLock(20 * degree) / degree,
    expected: 2.3308,
    tolerance: 0.0005,
    source: firstPrinciples,
  },
  {
    id: "ALI-15 camber steered 20° inward, degrees",
    value: camberAtLock(-20 * degree) / degree,
    expected: -1.1032,
    tolerance: 0.0005,
    source: firstPrinciples,
  },
  {
    id: "ALI-16 thrust angle, minutes",
    value: thrustAngle({ left: 12 * minute, right: 4 * minute }) / minute,
    expected: 4,
    tolerance: 1e-12,
    source: firstPrinciples,
  },
  {
    id: "20 minutes of total toe on a 15 in rim, mm",
    value: totalDistanceAtRim({ left: 10 * minute, right: 10 * minute }, 15 * inch) / mm,
    expected: 2.2,
    tolerance: 0.05,
    source: "common practice, no source",
  },
];

test.each(rows)("$id ($source)", ({ value, expected, tolerance }) => {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);
});

test("the exact swing gives back the axis of ALI-14, castor 5° and kingpin 10°", () => {
  const outward = camberAtLock(20 * degree);
  const inward = camberAtLock(-20 * degree);
  const axis = steeringAxisFromSwing({ outward, inward, straight: 0, steer: 20 * degree });
  expect(axis.castor / degree).toBeCloseTo(5, 9);
  expect(axis.kingpin / degree).toBeCloseTo(10, 8);
});

/** ALI-12's second method: the outer wheel's axle line drawn through the turn centre of the inner one. */
function outerFromTurnCentre(inner: number): number {
  const centre = plan.kingpinTrack / 2 + plan.wheelbase / Math.tan(inner);
  return Math.atan(plan.wheelbase / (centre + plan.kingpinTrack / 2));
}

/**
 * Camber with castor 5°, kingpin 10° and upright wheel at a turntable reading, by turning the spin axis with
 * Rodrigues' formula and searching the turn that gives the reading: a way that `swing.ts` does not use.
 */
function camberAtLock(reading: number): number {
  const length = Math.hypot(Math.tan(5 * degree), Math.tan(10 * degree), 1);
  const k = { x: -Math.tan(5 * degree) / length, y: -Math.tan(10 * degree) / length, z: 1 / length };
  const n = spinAxisOf({ camber: 0, toeIn: 0, side: "left" });
  const along = k.x * n.x + k.y * n.y + k.z * n.z;
  const turned = (angle: number) => {
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    return {
      x: n.x * c + (k.y * n.z - k.z * n.y) * s + k.x * along * (1 - c),
      y: n.y * c + (k.z * n.x - k.x * n.z) * s + k.y * along * (1 - c),
      z: n.z * c + (k.x * n.y - k.y * n.x) * s + k.z * along * (1 - c),
    };
  };
  let angle = reading;
  for (let step = 0; step < 60; step += 1) angle += reading + toeInOf(turned(angle), "left");
  return camberOf(turned(angle));
}
