import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  cableTurnsPerWheelTurn,
  engineSpeedAt,
  roadSpeed,
  travelPerEngineAngle,
  wheelTurns,
} from "./gearing";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("gearing", () => {
  test("road and engine speed undo each other; a larger ratio is slower", () => {
    fc.assert(
      fc.property(
        between(0, 800),
        between(1.5, 2.2),
        between(2, 20),
        (engine, circumference, overallRatio) => {
          const gearing = { circumference, overallRatio };
          const speed = roadSpeed(engine, gearing);
          expect(engineSpeedAt(speed, gearing)).toBeCloseTo(engine, 9);
          expect(roadSpeed(engine, { circumference, overallRatio: overallRatio * 2 })).toBeCloseTo(
            speed / 2,
            9,
          );
          expect(speed).toBeCloseTo(engine * travelPerEngineAngle(gearing), 12);
        },
      ),
    );
  });

  test("one turn of the wheels at 1 to 1 is one circumference", () => {
    expect(2 * Math.PI * travelPerEngineAngle({ circumference: 1.8, overallRatio: 1 })).toBeCloseTo(1.8, 12);
    expect(wheelTurns(18, 1.8)).toBeCloseTo(10, 12);
    expect(cableTurnsPerWheelTurn({ finalDrive: 4, driving: 5, driven: 20 })).toBe(1);
  });

  test("refuses what does not turn", () => {
    const gearing = { circumference: 1.8, overallRatio: 4 };
    expect(() => roadSpeed(-1, gearing)).toThrow(/engineSpeed/);
    expect(() => engineSpeedAt(-1, gearing)).toThrow(/speed/);
    expect(() => travelPerEngineAngle({ ...gearing, circumference: 0 })).toThrow(/circumference/);
    expect(() => travelPerEngineAngle({ ...gearing, overallRatio: 0 })).toThrow(/overallRatio/);
    expect(() => wheelTurns(-1, 1.8)).toThrow(/distance/);
    expect(() => wheelTurns(1, 0)).toThrow(/circumference/);
    const drive = { finalDrive: 4, driving: 5, driven: 20 };
    for (const place of ["finalDrive", "driving", "driven"] as const)
      expect(() => cableTurnsPerWheelTurn({ ...drive, [place]: 0 })).toThrow(place);
  });
});
