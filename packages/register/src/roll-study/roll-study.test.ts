import { rollAt, rollGradient, standardGravity } from "@trunnion/calc";
import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { stateKey } from "../state/key";
import type { State, StateValue } from "../state/state";
import { parseValue } from "../value/parse";
import { diameterForRate, type StudyCar, settingNow, studyRoll, withoutBars } from "./answer";
import { readStudy, studyFields } from "./field";

const car: StudyCar = {
  front: {
    track: 1.3,
    mass: 400,
    unsprungMass: 60,
    unsprungHeight: 0.29,
    rollCentreHeight: 0.05,
    springRate: 30_000,
    motionRatio: Math.SQRT1_2,
    barWheelRate: 8000,
  },
  rear: {
    track: 1.28,
    mass: 420,
    unsprungMass: 75,
    unsprungHeight: 0.29,
    rollCentreHeight: 0.12,
    springRate: 17_000,
    motionRatio: 1,
    barWheelRate: 3000,
  },
  cgHeight: 0.45,
};

function answered(setting = settingNow(car)) {
  const result = studyRoll(car, setting);
  if (!result.ok) throw new Error(result.because);
  return result.answer;
}

function stateOf(entries: Readonly<Record<string, string>>): State {
  return new Map(
    Object.entries(entries).map(([place, entered]): [string, StateValue] => {
      const [key = "", side = "whole"] = place.split(" ") as [string, "left" | "right" | "whole"];
      const one = builtInBook.find(key);
      const read = one && parseValue(one, entered);
      if (!read?.ok) throw new Error(`${place} cannot be read`);
      const source = { title: "test", trust: "stated" } as const;
      const at = { characteristic: key, side, value: read.value, source };
      return [stateKey(key, side), { ...at, origin: "reading", originId: place }];
    }),
  );
}

describe("springs and bars in roll", () => {
  test("are what the calculator's own functions give for the same car", () => {
    const { motionRatio: _f, springRate: _a, ...front } = car.front;
    const { motionRatio: _r, springRate: _b, ...rear } = car.rear;
    const same = {
      front: { ...front, springWheelRate: 15_000 },
      rear: { ...rear, springWheelRate: 17_000 },
      cgHeight: car.cgHeight,
    };
    const acceleration = 0.6 * standardGravity;
    expect(answered().roll).toBeCloseTo(rollAt(same, acceleration).angle, 12);
    expect(answered().rateShare).toBeCloseTo(rollGradient(same).frontRollRateShare, 12);
  });

  test("a stiffer front bar rolls the car less, loads the front more and leaves the ride alone", () => {
    const [now, stiffer] = [answered(), answered({ ...settingNow(car), frontBar: 16_000 })];
    expect(stiffer.roll).toBeLessThan(now.roll);
    expect(stiffer.transferShare).toBeGreaterThan(now.transferShare);
    expect(stiffer.frequency).toEqual(now.frequency);
  });

  test("a spring four times as stiff doubles the ride frequency (√(k/m)/2π)", () => {
    const stiff = answered({ ...settingNow(car), frontSpring: 120_000 });
    expect(stiff.frequency.front).toBeCloseTo(2 * answered().frequency.front, 10);
  });

  test("without its bars a car rolls more than with either", () => {
    const rolls = (["none", "frontOnly", "rearOnly"] as const).map(
      (fitting) => answered(withoutBars(settingNow(car), fitting)).roll,
    );
    expect(rolls[0]).toBeGreaterThan(Math.max(rolls[1] ?? 0, rolls[2] ?? 0));
    expect(rolls[1]).toBeGreaterThan(answered().roll);
  });

  test("a wheel in the air is an answer in words", () => {
    const result = studyRoll(car, { ...settingNow(car), acceleration: 2.5 * standardGravity });
    expect(result).toMatchObject({ ok: false, because: expect.stringMatching(/leaves the ground/) });
  });

  test("a bar of twice the diameter is sixteen times as stiff", () => {
    expect(diameterForRate({ diameter: 0.016, rate: 1000 }, 16_000)).toBeCloseTo(0.032, 12);
  });
});

describe("what a study is made of", () => {
  test("says of an empty record everything that it lacks, and takes nothing for granted", () => {
    const fields = studyFields(new Map(), builtInBook);
    expect(fields.every(({ si }) => si === undefined)).toBe(true);
    const { car: made, lacking } = readStudy(fields, {});
    expect(made).toBeUndefined();
    expect(lacking).toHaveLength(fields.length);
  });

  test("takes from the record what it has, and the rest as typed, in the trade's notation", () => {
    const fields = studyFields(
      stateOf({
        "front.track": "1300 mm",
        "front.cornerWeight left": "200 kg",
        "front.cornerWeight right": "210 kg",
      }),
      builtInBook,
    );
    const typed = Object.fromEntries(
      fields
        .filter(({ si }) => si === undefined)
        .map(({ name, dimension }) => [name, dimension === "rate" ? "95 lb/in" : "1"]),
    );
    const { car: made, problems } = readStudy(fields, { ...typed, "rear-mass": "8 cwt", cgHeight: "18 in" });
    expect(problems).toEqual([]);
    expect(made?.front).toMatchObject({ track: 1.3, mass: 410 });
    expect(made?.front.springRate).toBeCloseTo(16_637, 0);
    expect(made?.rear.mass).toBeCloseTo(406.4, 1);
    expect(made?.cgHeight).toBeCloseTo(0.4572, 6);
  });

  test("tells what cannot be read at its field", () => {
    const { problems } = readStudy(studyFields(new Map(), builtInBook), {
      "front-mass": "heavy",
      "rear-track": "-3 mm",
    });
    expect(problems.map(({ field }) => field)).toEqual(["front-mass", "rear-track"]);
  });
});
