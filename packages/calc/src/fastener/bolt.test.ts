import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseThread } from "../quantity/designation/thread";
import { jointForces } from "./joint";
import { boltFit, leastBoltLength, nominalLength, usualThreadLength } from "./length";
import {
  type SpacerStack,
  spacerStack,
  stackOpeningForce,
  threadEnduranceAmplitude,
  yieldForce,
} from "./spacer-stack";
import { rootDiameter, stressDiameter } from "./thread-form";
import {
  nutFactorOf,
  preloadByNutFactor,
  threadTorquePerForce,
  tighteningStress,
  torqueByNutFactor,
  torquePerForce,
  usualHeadDiameter,
} from "./torque";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const m10 = parseThread("M10");
const steel = 207e9;
const stack: SpacerStack = { thread: m10, stackLength: 0.02, eyeWidth: 0.014, force: 600, section: "thread" };

describe("a link on a stack of spacers", () => {
  test("worked by hand: 600 N at 27 mm on an 8.593 mm section is 260 MPa", () => {
    const of = spacerStack(stack, steel);
    expect(of.arm).toBeCloseTo(0.027, 12);
    expect(of.moment).toBeCloseTo(16.2, 12);
    // 32 · 16.2 N·m / (π · 0.0085931³)
    expect(of.bending / 1e6).toBeCloseTo(260.05, 1);
    expect(of.momentRatio).toBeCloseTo(27 / 7, 12);
    expect(of.diameter).toBe(stressDiameter(m10));
    expect(of.rootDiameter).toBe(rootDiameter(m10));
    expect(of.tension).toBe(0);
    expect(of.shear).toBeCloseTo(600 / ((Math.PI * of.diameter ** 2) / 4), 6);
  });

  test("with no spacer the arm is half of the eye, and the ratio is one", () => {
    const close = spacerStack({ ...stack, stackLength: 0 }, steel);
    expect(close).toMatchObject({ arm: 0.007, momentRatio: 1 });
  });

  test("bending grows with force and arm, falls with the cube of the diameter", () => {
    fc.assert(
      fc.property(
        between(1, 5000),
        between(0, 0.1),
        between(0.005, 0.05),
        between(1.01, 3),
        (force, length, eyeWidth, more) => {
          const shank: SpacerStack = {
            ...stack,
            force,
            stackLength: length,
            eyeWidth,
            section: "shank",
            shankDiameter: 0.01,
          };
          const base = spacerStack(shank, steel);
          expect(spacerStack({ ...shank, force: force * more }, steel).bending / base.bending).toBeCloseTo(
            more,
            9,
          );
          expect(spacerStack({ ...shank, stackLength: length + 0.001 }, steel).bending).toBeGreaterThan(
            base.bending,
          );
          expect(
            base.bending / spacerStack({ ...shank, shankDiameter: 0.01 * more }, steel).bending,
          ).toBeCloseTo(more ** 3, 6);
        },
      ),
    );
  });

  test("a plain shank at the bracket stands more than a thread there", () => {
    expect(yieldForce({ ...stack, section: "shank" }, 940e6)).toBeGreaterThan(yieldForce(stack, 940e6) * 1.4);
  });

  test("at the yield force the stress is the yield strength, with a preload too", () => {
    fc.assert(
      fc.property(
        between(0, 40e3),
        between(0, 0.05),
        between(300e6, 1100e6),
        (preload, stackLength, strength) => {
          const given = { ...stack, preload, stackLength };
          if (spacerStack({ ...given, force: 0 }, steel).tension >= strength * 0.999) return;
          const force = yieldForce(given, strength);
          expect(spacerStack({ ...given, force }, steel).stress / strength).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  test("preload takes from what is left for bending, and a preload that yields the bolt is refused", () => {
    expect(yieldForce({ ...stack, preload: 20e3 }, 940e6)).toBeLessThan(yieldForce(stack, 940e6));
    expect(() => yieldForce({ ...stack, preload: 60e3 }, 940e6)).toThrow(
      /preload alone stresses the bolt to 1035 MPa/,
    );
  });

  test("give is that of a cantilever, F·e³/(3·E·I)", () => {
    const { deflection, diameter } = spacerStack(stack, steel);
    expect(deflection).toBeCloseTo((600 * 0.027 ** 3) / (3 * steel * ((Math.PI * diameter ** 4) / 64)), 15);
    expect(spacerStack({ ...stack, force: 1200 }, steel).deflection / deflection).toBeCloseTo(2, 9);
  });

  test("the stack opens where bending lifts one edge off: a solid disc at F·d/8 of moment", () => {
    const opening = stackOpeningForce({ preload: 15e3, arm: 0.027 }, { outer: 0.018, bore: 0.01 });
    expect(opening * 0.027).toBeCloseTo((15e3 * (0.018 ** 2 + 0.01 ** 2)) / (8 * 0.018), 9);
    const solid = stackOpeningForce({ preload: 8, arm: 1 }, { outer: 1, bore: 1e-9 });
    expect(solid).toBeCloseTo(1, 9);
    expect(() => stackOpeningForce({ preload: 1, arm: 1 }, { outer: 0.01, bore: 0.01 })).toThrow(/no bore/);
  });

  test("endurance of a rolled thread, 51 MPa for M10 (VDI 2230, from memory)", () => {
    expect(threadEnduranceAmplitude(0.01) / 1e6).toBeCloseTo(51, 9);
    expect(threadEnduranceAmplitude(0.006)).toBeGreaterThan(threadEnduranceAmplitude(0.012));
  });

  test("nothing from NaN, no eye, or a shank thinner than the root", () => {
    expect(() => spacerStack({ ...stack, force: Number.NaN }, steel)).toThrow(/force/);
    expect(() => spacerStack({ ...stack, eyeWidth: 0 }, steel)).toThrow(/eyeWidth/);
    expect(() => spacerStack({ ...stack, stackLength: -1 }, steel)).toThrow(/stackLength/);
    expect(() => spacerStack({ ...stack, preload: -1 }, steel)).toThrow(/preload/);
    expect(() => spacerStack(stack, 0)).toThrow(/youngModulus/);
    expect(() => spacerStack({ ...stack, section: "shank", shankDiameter: 0.006 }, steel)).toThrow(
      /thinner than the thread's root/,
    );
  });
});

describe("torque", () => {
  const friction = { thread: 0.14, head: 0.14, headDiameter: 0.013 };

  test("K·d·F there and back", () => {
    fc.assert(
      fc.property(between(1, 1e5), between(0.05, 0.4), (preload, factor) => {
        const torque = torqueByNutFactor(preload, factor, 0.01);
        expect(preloadByNutFactor(torque, factor, 0.01) / preload).toBeCloseTo(1, 12);
      }),
    );
  });

  test("friction of 0.14 in M10 is a nut factor of about 0.19, near the usual 0.2", () => {
    expect(nutFactorOf(m10, friction)).toBeGreaterThan(0.17);
    expect(nutFactorOf(m10, friction)).toBeLessThan(0.2);
  });

  test("close to the handbook's sum F·(P/2π + 0.577·μ·d₂ + μ·D/2) (ISO 16047, VDI 2230, from memory), which is small-angle", () => {
    const sum = 0.0015 / (2 * Math.PI) + 0.577 * 0.14 * 0.009026 + (0.14 * 0.013) / 2;
    expect(torquePerForce(m10, friction) / sum).toBeCloseTo(1, 2);
  });

  test("without friction all of the work goes into the bolt: T·2π = F·P", () => {
    fc.assert(
      fc.property(fc.constantFrom("M6", "M10x1.25", "3/8 UNF", "1/4 BSW", "2 BA"), (name) => {
        const thread = parseThread(name);
        const arm = torquePerForce(thread, { thread: 0, head: 0, headDiameter: 0.013 });
        expect((arm * 2 * Math.PI) / thread.pitch).toBeCloseTo(1, 12);
      }),
    );
  });

  test("more friction, more torque for the same clamp; more torsion, more stress while tightening", () => {
    fc.assert(
      fc.property(between(0.02, 0.4), between(0.001, 0.1), (mu, more) => {
        expect(threadTorquePerForce(m10, mu + more)).toBeGreaterThan(threadTorquePerForce(m10, mu));
        expect(tighteningStress(m10, 2e4, mu + more)).toBeGreaterThan(tighteningStress(m10, 2e4, mu));
      }),
    );
  });

  test("a turned face is 1.3 d across in the mean; a nut that cannot be turned is refused", () => {
    expect(usualHeadDiameter(0.01)).toBeCloseTo(0.013, 12);
    expect(() => threadTorquePerForce(m10, 20)).toThrow(/does not turn/);
    expect(() => torquePerForce(m10, { ...friction, head: -0.1 })).toThrow(/friction.head/);
    expect(() => torquePerForce(m10, { ...friction, headDiameter: 0 })).toThrow(/headDiameter/);
  });
});

describe("a joint", () => {
  test("bolt and clamp forces differ by the load until the joint opens, and after it", () => {
    fc.assert(
      fc.property(between(0, 1e5), between(0, 2e5), between(0, 0.9), (preload, load, constant) => {
        const { bolt, clamp, separation } = jointForces({ preload, load, constant });
        expect(bolt - clamp).toBeCloseTo(load, 5);
        expect(clamp > 0).toBe(load < separation && preload > 0);
      }),
    );
  });

  test("a bolt that took all of the load would leave no joint, and is refused", () => {
    expect(() => jointForces({ preload: 1, load: 1, constant: 1 })).toThrow(/below 1, but is 1/);
  });
});

describe("length", () => {
  const stackUp = { grip: 0.044, nutHeight: 0.01, pitch: 0.0015 };

  test("grip, nut and two threads out", () => {
    expect(leastBoltLength(stackUp)).toBeCloseTo(0.057, 12);
    expect(leastBoltLength({ ...stackUp, threadsOut: 0 })).toBeCloseTo(0.054, 12);
  });

  test("the next nominal length is the least one or the next above it", () => {
    expect(nominalLength(0.057, "metric")).toBe(0.06);
    expect(nominalLength(0.06, "metric")).toBe(0.06);
    expect(nominalLength(0.0601, "metric")).toBe(0.065);
    expect(nominalLength(1.01 * 0.0254, "inch")).toBeCloseTo(1.25 * 0.0254, 12);
    expect(nominalLength(0.9 * 0.0254, "inch")).toBeCloseTo(0.0254, 12);
    expect(nominalLength(4.1 * 0.0254, "inch")).toBeCloseTo(4.5 * 0.0254, 12);
    expect(() => nominalLength(0.31, "metric")).toThrow(/beyond the nominal metric lengths/);
  });

  test.each([
    [0.01, 0.06, "metric", 0.026],
    [0.01, 0.13, "metric", 0.032],
    [0.01, 0.22, "metric", 0.045],
    [0.01, 0.02, "metric", 0.02],
    [0.009525, 0.0508, "inch", 0.0254],
    [0.009525, 0.1778, "inch", 0.03175],
  ] as const)(
    "thread of a %d m bolt of %d m (%s) is %d m (ISO 888, ASME B18.2.1, from memory)",
    (d, length, series, expected) => {
      expect(usualThreadLength(d, length, series)).toBeCloseTo(expected, 9);
    },
  );

  test("says where shank, nut and shear fall", () => {
    const fit = boltFit(stackUp, { length: 0.06, threadLength: 0.026, shearPlane: 0.008 });
    expect(fit.threadsOut).toBeCloseTo(4, 9);
    expect(fit.shankLength).toBeCloseTo(0.034, 12);
    expect(fit.threadUnderNut).toBeCloseTo(0.01, 12);
    expect(fit.shearPlane).toBe("shank");
    expect(boltFit(stackUp, { length: 0.06, threadLength: 0.06, shearPlane: 0.008 }).shearPlane).toBe(
      "thread",
    );
    expect(boltFit(stackUp, { length: 0.06, threadLength: 0.026 }).shearPlane).toBe("not given");
    expect(() => boltFit(stackUp, { length: 0.05, threadLength: 0.06 })).toThrow(/longer than the bolt/);
  });
});
