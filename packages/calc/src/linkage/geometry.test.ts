import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { branchOf, type Circle, meetSphere } from "./circle";
import { exampleWishbone } from "./example";
import { armTrace, centrePlaneHeight, finite, meet, traceOf } from "./front-view";
import { solveLinear } from "./linear";
import { mirrorHardpoints } from "./mirror";
import { drive } from "./newton";
import { rotate } from "./pose";
import { distance, dot, mutable, normalise } from "./vector";
import { upright, Wheel } from "./wheel";

const coordinate = fc.double({ min: -1, max: 1, noNaN: true });
const vector = fc.tuple(coordinate, coordinate, coordinate).map(([x, y, z]) => ({ x, y, z }));

describe("circle and sphere", () => {
  test("the point lies on both, on the side asked for", () => {
    fc.assert(
      fc.property(vector, vector, vector, fc.constantFrom(-1, 1), (centre, direction, sphere, branch) => {
        const axis = mutable(direction);
        fc.pre(Math.hypot(direction.x, direction.y, direction.z) > 0.1);
        normalise(axis);
        const circle: Circle = { centre: mutable(centre), axis, radius: 0.5 };
        const out = mutable();
        const meets = meetSphere(out, circle, { centre: sphere, reach: 0.7, branch });
        if (!meets) return;
        expect(distance(out, centre)).toBeCloseTo(0.5, 9);
        expect(dot(out, axis)).toBeCloseTo(dot(centre, axis), 9);
        expect(distance(out, sphere)).toBeCloseTo(0.7, 6);
        expect([0, branch]).toContain(branchOf(circle, sphere, out));
      }),
    );
  });

  test("apart, inside one another and without a direction they do not meet", () => {
    const circle: Circle = { centre: mutable(), axis: mutable({ x: 1, y: 0, z: 0 }), radius: 0.5 };
    const out = mutable({ x: 9, y: 9, z: 9 });
    expect(meetSphere(out, circle, { centre: { x: 0, y: 2, z: 0 }, reach: 1, branch: 1 })).toBe(false);
    expect(meetSphere(out, circle, { centre: { x: 0, y: 0.1, z: 0 }, reach: 0.2, branch: 1 })).toBe(false);
    expect(
      meetSphere(out, circle, { centre: { x: 0.3, y: 0, z: 0 }, reach: Math.hypot(0.3, 0.5), branch: 1 }),
    ).toBe(false);
    expect(out).toEqual({ x: 9, y: 9, z: 9 });
  });

  test("a point in line with both centres has no side", () => {
    const circle: Circle = { centre: mutable(), axis: mutable({ x: 1, y: 0, z: 0 }), radius: 0.5 };
    expect(branchOf(circle, { x: 0, y: 1, z: 0 }, { x: 0, y: 0.5, z: 0 })).toBe(0);
    expect(branchOf(circle, { x: 0, y: 1, z: 0 }, { x: 0, y: 0, z: 0.5 })).toBe(1);
    expect(branchOf(circle, { x: 0, y: 1, z: 0 }, { x: 0, y: 0, z: -0.5 })).toBe(-1);
  });
});

describe("front view", () => {
  test("parallel traces meet at infinity, whose line still crosses the centre plane", () => {
    const level = { a: 0, b: 1, c: -0.2 };
    const centre = meet(level, { a: 0, b: 1, c: -0.4 });
    expect(centre.w).toBe(0);
    expect(finite(centre)).toBeNull();
    expect(centrePlaneHeight({ x: 0, y: 0.65, z: 0.02 }, centre)).toBeCloseTo(0.02, 12);
  });

  test("an instant centre straight above the contact point has no roll centre, and nor have traces that coincide", () => {
    expect(centrePlaneHeight({ x: 0, y: 0.65, z: 0 }, { y: 0.65, z: 0.4, w: 1 })).toBeNull();
    const line = { a: 0.6, b: 0.8, c: -0.1 };
    expect(centrePlaneHeight({ x: 0, y: 0.65, z: 0 }, meet(line, line))).toBeNull();
    expect(centrePlaneHeight({ x: 0, y: 0.65, z: 0 }, meet(null, line))).toBeNull();
  });

  test("a plane across the car leaves no trace", () => {
    expect(traceOf({ x: 0, y: 0, z: 0 }, { x: 1, y: 0, z: 0 }, 0.1)).toBeNull();
  });

  test("the trace of an arm with raked pivots is taken in the wheel's own plane", () => {
    const arm = {
      front: { x: 0.2, y: 0.3, z: 0.25 },
      rear: { x: -0.2, y: 0.3, z: 0.15 },
      outer: { x: 0, y: 0.6, z: 0.2 },
    };
    // The pivots rise by 100 mm over 400 mm, the arm itself is level: at x = 0.1 its plane lies 25 mm higher.
    const { a, b, c } = armTrace(arm, 0.1) ?? { a: 0, b: 0, c: 0 };
    expect(a).toBeCloseTo(0, 12);
    expect(-c / b).toBeCloseTo(0.225, 12);
  });
});

describe("Newton's method on a height", () => {
  const climber = (reach: number) => ({
    angle: 0,
    height: 0,
    heightRate: 1,
    placed: 0,
    place(angle: number) {
      this.placed += 1;
      if (Math.abs(angle) > reach) return false;
      this.angle = angle;
      this.height = Math.sin(angle);
      this.heightRate = Math.cos(angle);
      return true;
    },
  });

  test("finds it, and halves steps that leave the reach", () => {
    const mechanism = climber(1.2);
    expect(drive(mechanism, Math.sin(1.19))).toBe(true);
    expect(mechanism.angle).toBeCloseTo(1.19, 9);
  });

  test("gives up after its limit of steps", () => {
    const mechanism = climber(1);
    expect(drive(mechanism, 0.99)).toBe(false);
    expect(mechanism.placed).toBe(60);
    expect(drive(climber(1), Number.NaN)).toBe(false);
  });
});

describe("linear equations", () => {
  test("the solution satisfies them, for several right-hand sides at once", () => {
    const square = fc.array(fc.array(coordinate, { minLength: 4, maxLength: 4 }), {
      minLength: 4,
      maxLength: 4,
    });
    fc.assert(
      fc.property(square, square, (matrix, sides) => {
        const solution = sides.map((row) => [...row]);
        if (
          !solveLinear(
            matrix.map((row) => [...row]),
            solution,
          )
        )
          return;
        const size = Math.max(...solution.flat().map(Math.abs));
        fc.pre(size < 1e3);
        for (const [index, row] of matrix.entries()) {
          for (let column = 0; column < 4; column += 1) {
            const sum = row.reduce(
              (total, factor, at) => total + factor * (solution[at]?.[column] ?? Number.NaN),
              0,
            );
            expect(sum).toBeCloseTo(sides[index]?.[column] ?? Number.NaN, 7);
          }
        }
      }),
    );
  });

  test("a singular matrix is told as such", () => {
    expect(
      solveLinear(
        [
          [1, 2],
          [2, 4],
        ],
        [[1], [2]],
      ),
    ).toBe(false);
    expect(
      solveLinear(
        [
          [0, 1],
          [1, 0],
        ],
        [[3], [5]],
      ),
    ).toBe(true);
  });
});

test("a rotation keeps lengths and its axis, and two halves make a whole", () => {
  fc.assert(
    fc.property(vector, vector, (turn, arrow) => {
      const whole = mutable();
      const half = mutable();
      rotate(whole, arrow, turn);
      rotate(half, arrow, { x: turn.x / 2, y: turn.y / 2, z: turn.z / 2 });
      rotate(half, half, { x: turn.x / 2, y: turn.y / 2, z: turn.z / 2 });
      expect(distance(whole, half)).toBeLessThan(1e-12);
      expect(dot(whole, whole)).toBeCloseTo(dot(arrow, arrow), 12);
      expect(dot(whole, turn)).toBeCloseTo(dot(arrow, turn), 12);
    }),
  );
});

test("the contact point is the lowest of the disc", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -0.3, max: 0.3, noNaN: true }),
      fc.double({ min: -0.5, max: 0.5, noNaN: true }),
      (camber, toeIn) => {
        const wheel = new Wheel({
          side: "left",
          wheelCentre: { x: 0, y: 0.65, z: 0.3 },
          camber,
          toeIn,
          loadedRadius: 0.3,
        });
        const contact = mutable();
        wheel.contact(contact, upright);
        expect(distance(contact, wheel.centre)).toBeCloseTo(0.3, 12);
        expect(dot(contact, wheel.spin)).toBeCloseTo(dot(wheel.centre, wheel.spin), 12);
        // Leaning by the camber the disc reaches down by its radius times the cosine.
        expect(contact.z).toBeCloseTo(0.3 - 0.3 * Math.cos(camber), 12);
      },
    ),
  );
});

test("mirroring twice is the identity", () => {
  expect(mirrorHardpoints(mirrorHardpoints(exampleWishbone))).toEqual(exampleWishbone);
});
