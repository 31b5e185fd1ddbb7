import { describe, expect, test } from "vitest";
import { runComputation } from "../catalogue/run";
import { tyreComputations } from "./catalogue";
import { tyreChangeComputation } from "./change.entry";
import { tyreDateComputation } from "./date.entry";
import { tyreGearingComputation } from "./gearing.entry";
import { tyreLoadComputation } from "./load.entry";
import { tyreRimComputation } from "./rim.entry";
import { tyreSizeComputation } from "./size.entry";
import { tyreSpeedometerComputation } from "./speedometer.entry";

type Run = ReturnType<typeof runComputation>;
const si = (run: Run, name: string): number => Number(run.outputs[name]?.si);
const text = (run: Run, name: string): string | undefined => run.outputs[name]?.text;
const step = (run: Run, symbol: string) => run.working.find((line) => line.symbol === symbol);

test.each(tyreComputations.map((one) => [one.name, one] as const))("%s runs its own example", (name, one) => {
  expect(name).toMatch(/^tyre\.[a-zA-Z]+$/);
  const run = runComputation(one, one.example);
  expect(run.working.length).toBeGreaterThan(1);
  expect(run.working.every((line) => line.text !== "")).toBe(true);
  expect(run.warnings).toEqual([]);
});

describe("tyre.size", () => {
  test("from a size that states everything", () => {
    const run = runComputation(tyreSizeComputation, { size: "165/80R15" });
    expect(text(run, "overallDiameter")).toBe("645.0 mm");
    expect(si(run, "sectionHeight")).toBeCloseTo(0.132, 12);
    expect(si(run, "sectionWidth")).toBeCloseTo(0.165, 12);
    expect(si(run, "circumference")).toBeCloseTo(3.05 * 0.645, 12);
    expect(si(run, "turnsPerMile")).toBeCloseTo(1609.344 / (3.05 * 0.645), 9);
    expect(si(run, "turnsPerKilometre")).toBeCloseTo(1000 / (3.05 * 0.645), 9);
    expect(step(run, "U")?.formula).toBe("3.05·D for radials");
    expect(step(run, "size")?.value).toBe("165/80 R 15");
  });

  test("an aspect ratio that is not stated is assumed aloud, or given", () => {
    const assumed = runComputation(tyreSizeComputation, { size: "155 R 13" });
    expect(assumed.warnings[0]).toContain("0.80 assumed");
    expect(text(assumed, "overallDiameter")).toBe("578.2 mm");
    const given = runComputation(tyreSizeComputation, { size: "155 R 13", aspect: "82 %" });
    expect(given.warnings).toEqual([]);
    expect(text(given, "overallDiameter")).toBe("584.4 mm");
    expect(() => runComputation(tyreSizeComputation, { size: "155/80 R 13", aspect: 0.82 })).toThrow(
      /states its aspect ratio itself/,
    );
    expect(runComputation(tyreSizeComputation, { size: "155/80 R 13", aspect: 0.8 }).warnings).toEqual([]);
  });

  test("a cross-ply rolls by its own factor; an unusual one has to be measured", () => {
    expect(step(runComputation(tyreSizeComputation, { size: "5.20-13" }), "U")?.formula).toBe(
      "2.99·D for cross-plies",
    );
    expect(() => runComputation(tyreSizeComputation, { size: "4.50-19" })).toThrow(
      /give it, or measure the tyre/,
    );
    const measured = runComputation(tyreSizeComputation, { size: "4.50-19", rollingCircumference: "2.1 m" });
    expect(measured.outputs.overallDiameter?.si).toBeNull();
    expect(measured.outputs.sectionHeight?.si).toBeNull();
    expect(si(measured, "circumference")).toBeCloseTo(2.1, 12);
  });

  test("measurements go before the size, and a diameter alone needs the construction", () => {
    const both = runComputation(tyreSizeComputation, {
      size: "165/80 R 15",
      overallDiameter: "640 mm",
      rollingCircumference: "1960 mm",
    });
    expect([si(both, "overallDiameter"), si(both, "circumference")]).toEqual([0.64, 1.96]);
    const diameter = runComputation(tyreSizeComputation, {
      overallDiameter: "640 mm",
      construction: "crossPly",
    });
    expect(si(diameter, "circumference")).toBeCloseTo(2.99 * 0.64, 12);
    expect(diameter.outputs.sectionWidth?.si).toBeNull();
    expect(() => runComputation(tyreSizeComputation, { overallDiameter: "640 mm" })).toThrow(
      /radial or crossPly/,
    );
    expect(() => runComputation(tyreSizeComputation, {})).toThrow(/give a size, a measured overall diameter/);
    expect(() => runComputation(tyreSizeComputation, { size: "165/80 15" })).toThrow(
      /does not say whether|no tyre size/,
    );
  });
});

describe("tyre.change", () => {
  test("ride height by half the diameters, reading and gearing by the circumferences", () => {
    const run = runComputation(tyreChangeComputation, tyreChangeComputation.example);
    const [before, after] = [0.3302 + 0.248, 0.3302 + 0.245];
    expect(si(run, "heightChange")).toBeCloseTo((after - before) / 2, 12);
    expect(si(run, "circumferenceChange")).toBeCloseTo(after / before - 1, 12);
    expect(si(run, "readingChange")).toBeCloseTo(before / after - 1, 12);
    expect(si(run, "speedAfter") / si(run, "speedBefore")).toBeCloseTo(after / before, 12);
    expect(si(run, "speedBefore")).toBeCloseTo((3.05 * before) / (2 * Math.PI * 3.9), 12);
    expect([si(run, "diameterBefore"), si(run, "diameterAfter")]).toEqual([
      expect.closeTo(before, 12),
      expect.closeTo(after, 12),
    ]);
  });

  test("says what it cannot: height without diameters, gearing without a ratio", () => {
    const measured = { rollingCircumference: "1800 mm" };
    const run = runComputation(tyreChangeComputation, { before: measured, after: { size: "155 R 13" } });
    expect([run.outputs.heightChange?.si, run.outputs.speedBefore?.si, run.outputs.speedAfter?.si]).toEqual([
      null,
      null,
      null,
    ]);
    expect(run.warnings).toEqual([expect.stringContaining("After: no aspect ratio stated")]);
    const other = runComputation(tyreChangeComputation, { before: { size: "155 R 13" }, after: measured });
    expect(other.outputs.heightChange?.si).toBeNull();
    expect(other.warnings).toEqual([expect.stringContaining("Before: ")]);
    expect(() => runComputation(tyreChangeComputation, { before: measured, after: {} })).toThrow(
      /^After: give a size/,
    );
  });
});

describe("tyre.speedometer", () => {
  const tyre = (millimetres: number) => ({ rollingCircumference: millimetres / 1000 });
  const change = { before: tyre(2000), after: tyre(1900), indicated: "100 km/h" };

  test("without a check on the old tyres it gives the true speed, but no verdict", () => {
    const run = runComputation(tyreSpeedometerComputation, change);
    expect(text(run, "trueSpeed")).toBe("95.00 km/h");
    expect(text(run, "verdict")).toBe("cannot tell: the speedometer's own error is not known");
    expect(text(run, "verdictBefore")).toBe(text(run, "verdict"));
    expect(run.outputs.overReading?.si).toBeNull();
    expect(si(run, "readingChange")).toBeCloseTo(2000 / 1900 - 1, 12);
    expect(si(run, "leastBefore")).toBeCloseTo(0.95 - 1, 12);
    expect(si(run, "mostBefore")).toBeCloseTo((132 / 116) * 0.95 - 1, 12);
    expect(run.warnings[0]).toContain("as if the speedometer had been exact");
    expect(run.working.filter((line) => line.text.startsWith("not given"))).toHaveLength(2);
  });

  test.each([
    [105, 100, 2000, "within UN R39", "within UN R39"],
    [100, 100, 2000, "within UN R39", "within UN R39"],
    [100, 100, 2001, "within UN R39", "reads low: never allowed"],
    [112, 100, 1900, "within UN R39", "reads higher than UN R39 allows"],
    [98, 100, 1900, "reads low: never allowed", "within UN R39"],
  ])("%d shown at a true %d, then tyres of %d mm: %s, then %s", (shown, true_, after, first, expected) => {
    const checked = { shownBefore: `${shown} km/h`, trueBefore: `${true_} km/h`, topSpeed: "180 km/h" };
    const run = runComputation(tyreSpeedometerComputation, { ...change, after: tyre(after), ...checked });
    expect(text(run, "verdictBefore")).toBe(first);
    expect(text(run, "verdict")).toBe(expected);
    expect(si(run, "overReading")).toBeCloseTo((shown / true_) * (2000 / after) - 1, 12);
    expect(run.warnings).toEqual([]);
    expect(run.working.some((line) => line.text.startsWith("not given"))).toBe(false);
  });

  test("a slow car is tested at slower speeds, where more is allowed", () => {
    const checked = { ...change, after: tyre(2000), shownBefore: "115 km/h", trueBefore: "100 km/h" };
    expect(
      text(runComputation(tyreSpeedometerComputation, { ...checked, topSpeed: "90 km/h" }), "verdict"),
    ).toBe("within UN R39");
    expect(text(runComputation(tyreSpeedometerComputation, checked), "verdict")).toBe(
      "reads higher than UN R39 allows",
    );
  });

  test("half a check is refused", () => {
    expect(() => runComputation(tyreSpeedometerComputation, { ...change, shownBefore: "100 km/h" })).toThrow(
      /needs both/,
    );
    expect(() => runComputation(tyreSpeedometerComputation, { ...change, trueBefore: "100 km/h" })).toThrow(
      /needs both/,
    );
  });
});

describe("tyre.gearing", () => {
  test("its example: a mile is some 912 turns and 1256 of the cable", () => {
    const run = runComputation(tyreGearingComputation, tyreGearingComputation.example);
    expect(si(run, "wheelTurnsPerMile")).toBeCloseTo(1609.344 / (3.05 * 0.5782), 6);
    expect(si(run, "cableTurnsPerMile")).toBeCloseTo((si(run, "wheelTurnsPerMile") * 3.9 * 6) / 17, 6);
    expect(si(run, "roadSpeed")).toBeCloseTo(((5000 / 60) * 3.05 * 0.5782) / 3.9, 6);
    expect(si(run, "engineSpeed")).toBeCloseTo(100 / 3.6 / si(run, "speedPer1000"), 6);
    expect(step(run, "i")?.value).toBeCloseTo(3.9, 12);
  });

  test("answers only what it is asked", () => {
    const bare = { tyre: { size: "155/80 R 13" }, gearRatio: 1.4, finalDrive: 3.9 };
    const run = runComputation(tyreGearingComputation, bare);
    for (const name of ["roadSpeed", "engineSpeed", "cableTurnsPerMile"])
      expect(run.outputs[name]?.si).toBeNull();
    expect(() => runComputation(tyreGearingComputation, { ...bare, drivingTeeth: 6 })).toThrow(
      /teeth of both gears/,
    );
    expect(() => runComputation(tyreGearingComputation, { ...bare, drivenTeeth: 17 })).toThrow(
      /teeth of both gears/,
    );
  });
});

describe("tyre.load", () => {
  test("enough, and how much of it is used", () => {
    const run = runComputation(tyreLoadComputation, tyreLoadComputation.example);
    expect([si(run, "capacity"), si(run, "allowed"), si(run, "load")]).toEqual([475, 475, 240]);
    expect(si(run, "use")).toBeCloseTo(240 / 475, 12);
    expect([text(run, "loadVerdict"), text(run, "speedVerdict")]).toEqual(["enough", "fast enough"]);
  });

  test("index and symbol given go before those on the tyre", () => {
    const run = runComputation(tyreLoadComputation, {
      ...tyreLoadComputation.example,
      loadIndex: 75,
      speedSymbol: "Q",
    });
    expect([si(run, "capacity"), text(run, "speedVerdict")]).toEqual([
      387,
      "too slow: the symbol ends at 160 km/h",
    ]);
    expect(text(run, "loadVerdict")).toBe("none at that speed: it is beyond the tyre's symbol");
    expect(run.outputs.allowed?.si).toBeNull();
  });

  test("what is not known is never enough", () => {
    const none = runComputation(tyreLoadComputation, { axleMass: 400 });
    expect(text(none, "loadVerdict")).toBe("cannot tell: the load index is not known");
    expect(text(none, "speedVerdict")).toBe("cannot tell: the speed symbol is not known");
    const slow = runComputation(tyreLoadComputation, { axleMass: 400, loadIndex: 82, speedSymbol: "T" });
    expect(text(slow, "loadVerdict")).toBe("cannot tell: speed symbol and top speed are needed");
    expect(text(slow, "speedVerdict")).toBe("cannot tell: the top speed is not given");
    const heavy = runComputation(tyreLoadComputation, { axleMass: 951, loadIndex: 82 });
    expect(text(heavy, "loadVerdict")).toBe("too little: the tyre is overloaded");
    const just = runComputation(tyreLoadComputation, {
      axleMass: 950,
      loadIndex: 82,
      speedSymbol: "T",
      topSpeed: "190 km/h",
    });
    expect(text(just, "loadVerdict")).toBe("enough");
  });

  test("a V tyre carries less near its limit", () => {
    const fast = { axleMass: 900, loadIndex: 82, speedSymbol: "V" };
    expect(text(runComputation(tyreLoadComputation, { ...fast, topSpeed: "200 km/h" }), "loadVerdict")).toBe(
      "enough",
    );
    const run = runComputation(tyreLoadComputation, { ...fast, topSpeed: "240 km/h" });
    expect(si(run, "allowed")).toBeCloseTo(475 * 0.91, 9);
    expect(text(run, "loadVerdict")).toBe("too little: the tyre is overloaded");
  });

  test("a ZR tyre without a service description has no one speed", () => {
    expect(() => runComputation(tyreLoadComputation, { size: "205/50 ZR 15", axleMass: 400 })).toThrow(
      /speed symbol Z has no one speed/,
    );
  });
});

describe("tyre.rim", () => {
  test("on its measuring rim it is nominal; the rim's share decides the words", () => {
    const run = runComputation(tyreRimComputation, {
      tyre: "175/70 R 13",
      wheel: "5J x 13",
      measuringRimWidth: "5 in",
    });
    expect(si(run, "sectionWidth")).toBeCloseTo(0.175, 12);
    expect(si(run, "widthChange")).toBeCloseTo(0, 12);
    expect(si(run, "rimShare")).toBeCloseTo(0.127 / 0.175, 12);
    expect(run.working.filter(({ symbol }) => symbol === "A1")).toHaveLength(1);
    const taken = runComputation(tyreRimComputation, { tyre: "175/70 R 13", wheel: "5J x 13" });
    expect(step(taken, "A1")?.formula).toBe("taken: 0.7·S1");
    expect(si(taken, "widthChange")).toBeCloseTo(0.4 * (0.127 - 0.7 * 0.175), 12);
  });

  test.each([
    ["4½J x 13", "in the usual range: the maker's list decides"],
    ["4J x 13", "narrower than usual: ask the tyre maker"],
    ["6J x 13", "in the usual range: the maker's list decides"],
    ["6½J x 13", "wider than usual: ask the tyre maker"],
  ])("175 on %s: %s", (wheel, verdict) => {
    expect(text(runComputation(tyreRimComputation, { tyre: "175/70 R 13", wheel }), "verdict")).toBe(verdict);
  });

  test("a tyre on a rim of another diameter is refused", () => {
    expect(() => runComputation(tyreRimComputation, { tyre: "175/70 R 13", wheel: "5J x 14" })).toThrow(
      "the tyre wants a 13 in rim, the wheel has 14 in: it cannot be fitted",
    );
  });
});

test("tyre.date: three figures leave the year open, and say so", () => {
  const known = runComputation(tyreDateComputation, { code: "0617" });
  expect([known.outputs.week?.si, known.outputs.year?.si, text(known, "made")]).toEqual([
    6,
    2017,
    "week 6 of 2017",
  ]);
  const old = runComputation(tyreDateComputation, { code: "027" });
  expect(old.outputs.year?.si).toBeNull();
  expect(text(old, "made")).toBe("week 2 of a year ending in 7, decade unknown, before 2000");
  expect(old.warnings).toHaveLength(1);
});
