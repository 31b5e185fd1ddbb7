import fc from "fast-check";
import { lusolve } from "mathjs";
import { describe, expect, test } from "vitest";
import { runComputation } from "../catalogue/run";
import { drumBrakeFactor } from "./drum";
import { backwards, type DuoServoDrum, duoServoFactor, type Lining } from "./duo-servo";
import { duoServoComputation } from "./duo-servo.entry";

const degree = Math.PI / 180;
const drum: DuoServoDrum = {
  drumRadius: 0.1143,
  cylinderHeight: 0.075,
  adjusterDistance: 0.085,
  anchorDistance: 0.095,
  primary: { liningStart: 35 * degree, liningEnd: 125 * degree },
  secondary: { liningStart: 25 * degree, liningEnd: 140 * degree },
};

describe("as a second opinion: pressures summed over 20,000 strips of lining and three equations of statics", () => {
  /** Force and moment about the drum's centre of a lining whose pivot lies straight ahead (+x), per unit of peak pressure. */
  function summed({ liningStart, liningEnd }: Lining, friction: number, turn: 1 | -1) {
    const strips = 20_000;
    const width = (liningEnd - liningStart) / strips;
    let [x, y, moment] = [0, 0, 0];
    for (let strip = 0; strip < strips; strip += 1) {
      const angle = liningStart + (strip + 0.5) * width;
      const normal = Math.sin(angle) * drum.drumRadius * width;
      // The drum pushes the lining inwards and drags it along the way it turns.
      x += -normal * Math.cos(angle) - turn * friction * normal * Math.sin(angle);
      y += -normal * Math.sin(angle) + turn * friction * normal * Math.cos(angle);
      moment += turn * friction * normal * drum.drumRadius;
    }
    return { x, y, moment };
  }

  /**
   * Peak pressure and the pivot's reaction of a shoe under tip forces along +y at places on its x axis, per statics:
   * ΣX = 0, ΣY = 0, ΣM = 0 about the drum's centre.
   */
  function balance(
    lining: ReturnType<typeof summed>,
    pivot: number,
    tips: readonly { at: number; force: number }[],
  ) {
    const push = tips.reduce((sum, { force }) => sum + force, 0);
    const turning = tips.reduce((sum, { at, force }) => sum + at * force, 0);
    const solved = lusolve(
      [
        [lining.x, 1, 0],
        [lining.y, 0, 1],
        [lining.moment, 0, pivot],
      ],
      [0, -push, -turning],
    ).flat() as number[];
    const [pressure = Number.NaN, , reaction = Number.NaN] = solved;
    return { friction: (pressure * lining.moment) / drum.drumRadius, reaction };
  }

  test.each([0.1, 0.2, 0.3, 0.35, 0.4])("friction %d", (friction) => {
    const { cylinderHeight, adjusterDistance, anchorDistance } = drum;
    // The drum runs towards the pivot of a leading shoe: against the angle counted from it.
    const primary = balance(summed(drum.primary, friction, -1), adjusterDistance, [
      { at: -cylinderHeight, force: 1 },
    ]);
    const adjusterForce = -primary.reaction;
    const secondary = balance(summed(drum.secondary, friction, -1), anchorDistance, [
      { at: -adjusterDistance, force: Math.abs(adjusterForce) },
      { at: cylinderHeight, force: 1 },
    ]);
    const ours = duoServoFactor(friction, drum);
    expect(Math.abs(primary.friction)).toBeCloseTo(ours.primary, 5);
    expect(Math.abs(secondary.friction)).toBeCloseTo(ours.secondary, 4);
  });
});

describe("duo-servo", () => {
  test("gives 4 to 7 times the cylinder's force at a friction of 0.35 to 0.4, a simplex drum about 2 (Bosch Automotive Handbook, brake factors; from memory)", () => {
    for (const friction of [0.35, 0.38]) {
      expect(duoServoFactor(friction, drum).brakeFactor).toBeGreaterThan(4);
      expect(duoServoFactor(friction, drum).brakeFactor).toBeLessThan(7);
    }
    const shoe = { ...drum, ...drum.secondary, pinDistance: 0.085, tipArm: 0.16 };
    expect(drumBrakeFactor("simplex", 0.38, shoe)).toBeLessThan(3);
    expect(duoServoFactor(0.38, drum).brakeFactor).toBeGreaterThan(drumBrakeFactor("duplex", 0.38, shoe));
  });

  test("about the drum's centre the torque is what the adjuster takes over, shoe by shoe", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.42, noNaN: true }), (friction) => {
        const { primary, adjusterForce } = duoServoFactor(friction, drum);
        const handedOn = adjusterForce * drum.adjusterDistance;
        expect(handedOn).toBeCloseTo(drum.cylinderHeight + primary * drum.drumRadius, 12);
      }),
    );
  });

  test("with next to no friction the adjuster is a lever's other end, and the drum does next to nothing", () => {
    const { adjusterForce, brakeFactor } = duoServoFactor(1e-9, drum);
    expect(adjusterForce).toBeCloseTo(drum.cylinderHeight / drum.adjusterDistance, 6);
    expect(brakeFactor).toBeLessThan(1e-7);
  });

  test("with linings alike at both ends, backwards is as strong as forwards; backwards twice is forwards", () => {
    const even = { ...drum, anchorDistance: 0.085, adjusterDistance: 0.085 };
    const lining = { liningStart: 40 * degree, liningEnd: 140 * degree };
    const alike = { ...even, primary: lining, secondary: lining };
    const forwards = duoServoFactor(0.3, alike).brakeFactor;
    expect(duoServoFactor(0.3, backwards(alike)).brakeFactor).toBeCloseTo(forwards, 12);
    const twice = backwards(backwards(drum));
    expect(twice.primary.liningEnd).toBeCloseTo(drum.primary.liningEnd, 12);
    expect(twice.secondary.liningStart).toBeCloseTo(drum.secondary.liningStart, 12);
  });

  test("an anchor nearer the centre than the cylinder is refused, and so is a friction that locks", () => {
    expect(() => duoServoFactor(0.3, { ...drum, anchorDistance: 0.07 })).toThrow(
      expect.objectContaining({ code: "ANCHOR_BELOW_CYLINDER", place: "anchorDistance" }),
    );
    expect(() => duoServoFactor(0.3, { ...drum, anchorDistance: 0.075 })).not.toThrow();
    expect(() => duoServoFactor(0.9, drum)).toThrow(expect.objectContaining({ code: "SELF_LOCKING" }));
  });
});

describe("brake.duoServo", () => {
  const { example } = duoServoComputation;
  const run = (change: object = {}) => runComputation(duoServoComputation, { ...example, ...change });
  const si = (of: ReturnType<typeof run>, name: string) => Number(of.outputs[name]?.si);

  test("torque is factor, piston and radius; without a pressure there is none", () => {
    const force = (4e6 * Math.PI * (0.875 * 0.0254) ** 2) / 4;
    expect(si(run(), "torque")).toBeCloseTo(si(run(), "brakeFactor") * force * 0.1143, 6);
    expect(si(run(), "brakeFactor")).toBeCloseTo(si(run(), "primary") + si(run(), "secondary"), 12);
    for (const missing of ["pressure", "pistonDiameter"])
      expect(run({ [missing]: undefined }).outputs.torque?.si).toBeNull();
    expect(run().warnings).toEqual([]);
  });

  test("a tenth more friction changes it by far more than a tenth, which no other brake does as much", () => {
    expect(si(run(), "sensitivity")).toBeGreaterThan(0.2);
    expect(si(run(), "reverseFactor")).toBeGreaterThan(3);
  });

  test("says where it locks: with a little more friction, and backwards", () => {
    const locks = run({ friction: 0.7 });
    expect(locks.warnings.join(" ")).toContain("grabs");
    expect(locks.warnings.join(" ")).toContain("Backwards");
    expect(locks.outputs.sensitivity?.si).toBeNull();
    expect(locks.outputs.reverseFactor?.si).toBeNull();
    expect(run({ friction: 0.66 }).warnings).toEqual(["Backwards a shoe locks by itself."]);
    expect(run({ friction: 0.58 }).warnings).toEqual([]);
    expect(() => run({ anchorDistance: "60 mm" })).toThrow(
      "at the cylinder's line or beyond it, 75 mm from the drum's centre, but lies 60 mm from it",
    );
  });
});
