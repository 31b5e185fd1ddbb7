import { describe, expect, test } from "vitest";
import { fromSi, toSi, unitNamed } from "../quantity/unit";
import { axleLoadsUnderBraking, type BrakedCar, idealForceShares, idealFrontShare } from "./balance";
import { discTorque } from "./disc";
import { drumBrakeFactor, shoeFactor } from "./drum";
import { brakingEnergy, temperatureRise } from "./heat";
import { linePressure, pistonArea } from "./hydraulic";
import {
  brakeTests,
  leastDecelerationAtAdhesion,
  regulationDeceleration,
  regulationDistance,
} from "./regulation";
import { meanFullyDevelopedDeceleration } from "./stop";
import { brakedStop, tandemCylinder } from "./system";

const near = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
const g = 9.80665;
const inch = 0.0254;
const pound = 0.45359237;
const poundForce = pound * g;

describe("from the foot to the disc (first principles, from memory)", () => {
  test("BRK-01: 450 N at 5:1 on a 19.05 mm cylinder is 7.894 MPa", () => {
    near(linePressure({ pedalForce: 450, pedalRatio: 5, masterBore: 0.01905 }) / 1e6, 7.894, 0.001);
  });

  test("BRK-02: 100 lbf at 6:1 on a 1 in cylinder is 763.9 psi", () => {
    const pressure = linePressure({ pedalForce: 100 * poundForce, pedalRatio: 6, masterBore: inch });
    near(fromSi(pressure, unitNamed("pressure", "psi")), 763.9, 0.1);
  });

  test("BRK-03: 7 MPa on 2290 mm² of one side, μ 0.38, 115 mm: 1401 N·m", () => {
    near(discTorque(7e6, { pistonArea: 2290e-6, friction: 0.38, effectiveRadius: 0.115 }), 1401, 1);
  });
});

/** Axle loads in N, as the questions give them. */
const car = (front: number, rear: number, wheelbase: number, cgHeight: number): BrakedCar => ({
  frontMass: front / g,
  rearMass: rear / g,
  wheelbase,
  cgHeight,
});

describe("balance", () => {
  const source =
    "licence exam bank ME13 of the Council of Engineers (Thailand), wording inferred from its key";

  test(`BRK-04: front force at the friction limit, 4500 N (${source})`, () => {
    near(0.65 * axleLoadsUnderBraking(car(6000, 3500, 2.4, 0.35), 0.65).front, 4500, 20);
  });

  test(`BRK-05: rear force at the friction limit, 1900 N (${source})`, () => {
    near(0.6 * axleLoadsUnderBraking(car(6500, 4000, 2.7, 0.35), 0.6).rear, 1900, 12);
  });

  const halves = car(500, 500, 2.4, 0.5);
  test("BRK-07: ideal front share (b + z·h)/L at 0.8 g (Limpert; Gillespie ch. 3, from memory)", () => {
    near(idealFrontShare(halves, 0.8), 0.6667, 0.0001);
  });

  test("BRK-08: the ideal forces add up to z (first principles, from memory)", () => {
    const { front, rear } = idealForceShares(halves, 0.8);
    near(front, 0.5333, 0.0001);
    near(rear, 0.2667, 0.0001);
    near(front + rear, 0.8, 1e-15);
  });
});

describe("heat", () => {
  const rise = (mass: number, speed: number, iron: number, specificHeat: number) =>
    temperatureRise(brakingEnergy(mass, { fromSpeed: speed }), { mass: iron, specificHeat });

  test.each([
    [
      "BRK-09 (College Physics 11th ed., ch. 11 P24; formula read, number worked out)",
      [1500, 30, 32, 448],
      47.1,
      0.05,
    ],
    ["BRK-10 (physics problem, printed)", [750, 24, 15, 450], 32, 0.05],
    ["BRK-12 (physics question and answer, printed)", [750, 23, 15, 450], 29.4, 0.05],
    [
      "BRK-13 (physics question and answer, printed; its energy was rounded first)",
      [1450, 36, 32, 448],
      66,
      0.6,
    ],
  ] as const)("%s", (_title, [mass, speed, iron, specificHeat], expected, tolerance) => {
    near(rise(mass, speed, iron, specificHeat), expected, tolerance);
  });

  test("BRK-14: 3000 lb from 88 ft/s into four discs of 10 lb rises 90.3 °F (note, printed)", () => {
    const btuPerPoundFahrenheit = 4186.8;
    const kelvin = rise(3000 * pound, 88 * 0.3048, 40 * pound, 0.13 * btuPerPoundFahrenheit);
    // The note takes 0.0013 Btu per ft·lbf and 32.2 ft/s² where 0.001285 is exact: its own rounding, put back here.
    const exact = kelvin * 1.8;
    near(exact * (0.0013 / 0.001285), 90.3, 0.1);
    near(exact, 89.3, 0.1);
  });
});

describe("regulation stops", () => {
  const kmh = (value: number) => value / 3.6;

  test("BRK-15: R13 secondary braking from 80 km/h, 93.3 m (UN R13 Rev. 4 Annex 4, 2.2; formula read)", () => {
    near(regulationDistance(brakeTests["R13 secondary"], kmh(80)), 93.3, 0.05);
  });

  test("BRK-18: 64 to 8 km/h in 26.815 m is 5.8 m/s² (UN R13 Annex 4, 1.1.2; formula read)", () => {
    near(meanFullyDevelopedDeceleration(kmh(64), kmh(8), 26.815), 5.8, 0.005);
  });

  test("BRK-19: R13 service brake from 80 km/h, 50.67 m and 5.79 m/s² (from memory)", () => {
    near(regulationDistance(brakeTests.R13, kmh(80)), 50.67, 0.01);
    near(regulationDeceleration(brakeTests.R13), 5.79, 0.01);
  });

  test("BRK-20: R13-H from 100 km/h, 70 m and 6.43 m/s² (from memory)", () => {
    near(regulationDistance(brakeTests["R13-H"], kmh(100)), 70, 0.005);
    near(regulationDeceleration(brakeTests["R13-H"]), 6.43, 0.005);
  });

  test("BRK-21: R13-H, engine connected, 5.76 m/s² (from memory)", () => {
    near(regulationDeceleration(brakeTests["R13-H engine"]), 5.76, 0.005);
  });

  test("BRK-23: z ≥ 0.1 + 0.7 (k − 0.2) (UN R13-H Annex 5, 3.1, from memory)", () => {
    for (const [adhesion, least] of [
      [0.2, 0.1],
      [0.5, 0.31],
      [0.8, 0.52],
    ] as const)
      near(leastDecelerationAtAdhesion(adhesion), least, 1e-9);
  });

  test("BRK-27: the limits in g (first principles)", () => {
    const unit = unitNamed("acceleration", "g");
    for (const [limit, expected] of [
      [2.55, 0.26],
      [2.9, 0.296],
      [4.5, 0.459],
      [6.43, 0.656],
    ] as const)
      near(fromSi(limit, unit), expected, 0.0006);
  });
});

describe("drum brakes: Shigley, Mechanical Engineering Design, example 16-2 (from memory)", () => {
  // Drum 300 mm, shoes 32 mm wide, μ 0.32, lining 0° to 126°, pins at 112 mm down and 50 mm out, arm 212 mm.
  const shoe = {
    drumRadius: 0.15,
    pinDistance: Math.hypot(0.112, 0.05),
    tipArm: 0.212,
    liningStart: 0,
    liningEnd: toSi(126, unitNamed("angle", "°")),
  };
  const force = 2280;

  test("the leading shoe gives 366 N·m and the trailing one 162 N·m at 2.28 kN", () => {
    near(shoeFactor("leading", 0.32, shoe) * force * shoe.drumRadius, 366, 1);
    near(shoeFactor("trailing", 0.32, shoe) * force * shoe.drumRadius, 162, 1);
  });

  test("both together 528 N·m", () => {
    near(drumBrakeFactor("simplex", 0.32, shoe) * force * shoe.drumRadius, 528, 1);
  });
});

describe("common practice, no source", () => {
  test("a small fibreglass sports car of some 800 kg dry stops well on a 10½ in disc", () => {
    // Two up and fuelled 980 kg; 48 mm sliding or opposed pistons, ordinary pads, no servo, a 0.7 in tandem cylinder.
    const small: BrakedCar = { frontMass: 470, rearMass: 510, wheelbase: 2.3, cgHeight: 0.46 };
    const pads = { friction: 0.38, thresholdPressure: 5e4, tyreRadius: 0.29 };
    const radius = (10.5 * inch) / 2 - 0.045 / 2;
    const perWheel = (diameter: number, at: number) => 2 * pads.friction * pistonArea(diameter) * at;
    const stop = brakedStop(
      {
        pedalRatio: 5,
        pressurePerForce: tandemCylinder(0.7 * inch),
        front: { ...pads, torquePerPressure: 2 * perWheel(0.048, radius) },
        rear: { ...pads, torquePerPressure: 2 * perWheel(0.036, 0.1) },
      },
      small,
      { pedalForce: 500, adhesion: 0.9 },
    );
    // "Well": to the limit of a good dry road within the 500 N of foot force of UN R13 (BRK-17), front wheels first,
    // beyond the 6.43 m/s² of R13-H (BRK-20), and far from fade in one stop from 130 km/h.
    expect(stop.lock?.axle).toBe("front");
    expect(stop.lock?.pedalForce).toBeLessThan(500);
    expect(stop.deceleration).toBeGreaterThan(6.43 / g);
    const heat = brakingEnergy(980, { fromSpeed: 130 / 3.6 }) * (stop.frontShare ?? Number.NaN);
    expect(temperatureRise(heat / 2, { mass: 5, specificHeat: 450 })).toBeLessThan(150);
  });
});
