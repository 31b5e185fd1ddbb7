import { describe, expect, test } from "vitest";
import { repeatability } from "../measurement/series";
import { gradeStrength, parseGrade } from "../quantity/designation/grade";
import { parseThread } from "../quantity/designation/thread";
import { threadsPerInch } from "../quantity/designation/thread-table";
import { engagementByRule, engagementNeeded, pitchLineArea, stripArea, stripShare } from "./engagement";
import { jointConstant, jointForces } from "./joint";
import { boltLoads } from "./strength";
import { halfFlankAngle, nutMinorDiameter, pitchDiameter, stressArea } from "./thread-form";
import { ordinaryFit } from "./thread-limit";
import { accumulatedPitchError, threadPair } from "./thread-pair";
import { nutFactors, preloadByNutFactor, torqueByNutFactor } from "./torque";

const near = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
const inch = 0.0254;
const poundForce = 4.4482216152605;
const psi = poundForce / inch ** 2;
const area = (thread: string) => stressArea(parseThread(thread));

describe("nominal stress area, mm² (EN ISO 898-1 and ISO 724 tables, reproduced, read)", () => {
  test.each([
    ["FAS-01", "M6x1", 20.1, 0.05],
    ["FAS-03", "M10x1.5", 58, 0.05],
    ["FAS-04", "M12x1.75", 84.3, 0.05],
    ["FAS-05", "M14x2", 115, 0.5],
    ["FAS-07", "M20x2.5", 245, 0.5],
    ["FAS-08", "M8x1", 39.2, 0.05],
    ["FAS-09", "M10x1.25", 61.2, 0.05],
    ["FAS-11", "M12x1.5", 88.1, 0.05],
    ["FAS-12", "M12x1.25", 92.1, 0.05],
    ["FAS-13", "M14x1.5", 125, 0.5],
  ])("%s: %s has %d", (_id, thread, expected, tolerance) => near(area(thread) * 1e6, expected, tolerance));

  test("M12x1 has 96.1; a table that prints 98.0 is a known misprint", () =>
    near(area("M12x1") * 1e6, 96.1, 0.05));
});

describe("tensile stress area, in² (Shigley 9th ed., table 8-2, p. 413, read)", () => {
  test.each([
    ["FAS-15", "1/4-28 UNF", 0.0364, 6e-5],
    ["FAS-16", "5/16-24 UNF", 0.058, 1e-4],
    ["FAS-17", "3/8-24 UNF", 0.0878, 6e-5],
    ["FAS-19", "1/2-20 UNF", 0.1599, 6e-5],
    ["FAS-20", "1/4-20 UNC", 0.0318, 6e-5],
    ["FAS-21", "5/16-18 UNC", 0.0524, 6e-5],
    ["FAS-23", "7/16-14 UNC", 0.1063, 6e-5],
    ["FAS-24", "1/2-13 UNC", 0.1419, 6e-5],
    ["FAS-25", "3/4-16 UNF", 0.373, 5e-4],
  ])("%s: %s has %d", (_id, thread, expected, tolerance) =>
    near(area(thread) / inch ** 2, expected, tolerance),
  );
});

const loads = (thread: string, grade: string) => {
  const parsed = parseThread(thread);
  return boltLoads(parsed, gradeStrength(parseGrade(grade), parsed.majorDiameter));
};

describe("loads of coarse metric bolts, N (EN ISO 898-1 tables, reproduced, read; 0.3 %)", () => {
  test.each([
    ["FAS-27", "M8", "10.9", "proof", 30400],
    ["FAS-28", "M8", "12.9", "proof", 35500],
    ["FAS-29", "M10", "8.8", "proof", 33700],
    ["FAS-31", "M10", "12.9", "proof", 56300],
    ["FAS-32", "M12", "8.8", "proof", 48900],
    ["FAS-33", "M12", "10.9", "proof", 70000],
    ["FAS-35", "M20", "8.8", "proof", 147000],
    ["FAS-36", "M8", "8.8", "tensile", 29200],
    ["FAS-37", "M10", "8.8", "tensile", 46400],
    ["FAS-39", "M10", "10.9", "tensile", 60300],
    ["FAS-40", "M12", "12.9", "tensile", 103000],
    ["FAS-41 (one table prints 91130, a digit too many)", "M4", "10.9", "tensile", 9130],
  ] as const)("%s: %s %s, %s load %d", (_id, thread, grade, kind, expected) => {
    near(loads(thread, grade)[kind] / expected, 1, 0.003);
  });
});

test("SCR-22: an M8 bolt of 8.8 holds 15 kN, which a seat's mounting must take, within its proof load of 21.2 kN (rule read, figures worked out)", () => {
  const { proof } = loads("M8", "8.8");
  near(proof, 21_200, 0.003 * 21_200);
  expect(proof).toBeGreaterThan(15_000);
});

describe("grades", () => {
  const strength = (grade: string, diameter: number) => gradeStrength(parseGrade(grade), diameter);

  test.each([
    ["FAS-43", "grade 5", [85, 120, 92]],
    ["FAS-44", "grade 8", [120, 150, 130]],
  ] as const)("%s: SAE J429 %s, ksi (Shigley table 8-9, p. 433, read)", (_id, grade, expected) => {
    const of = strength(grade, 0.375 * inch);
    expect(
      [of.proof, of.tensile, of.yield].map((stress) => Number((stress / psi / 1000).toFixed(6))),
    ).toEqual(expected);
  });

  test("FAS-45: proof stress of 8.8 above 16 mm, 10.9 and 12.9 (Shigley table 8-11, p. 435, read); 8.8 to 16 mm has 580", () => {
    const proof = (grade: string) => strength(grade, 0.02).proof / 1e6;
    near(proof("8.8") / 600, 1, 0.003);
    near(proof("10.9") / 830, 1, 0.003);
    near(proof("12.9") / 970, 1, 0.003);
    expect(strength("8.8", 0.016).proof).toBe(580e6);
  });

  test.each([
    ["FAS-46", "3/8-24 UNF", "grade 5", 7463, 0.0878],
    ["FAS-47", "7/16-20 UNF", "grade 5", 10090, 0.1187],
    ["FAS-48", "1/2-20 UNF", "grade 8", 19188, 0.1599],
  ] as const)(
    "%s: proof load of %s %s, lbf (both factors read, product worked out)",
    (_id, thread, grade, expected, table) => {
      // The rows multiply the table's rounded area, so that is put back; our own area agrees with it (above).
      const proof = loads(thread, grade).proof / poundForce;
      near((proof * table) / (area(thread) / inch ** 2), expected, 1);
    },
  );

  test("drop-link bolts are grade 8 or class 10.9 (common practice, no source): the two are one strength", () => {
    const [sae, iso] = [strength("grade 8", 0.375 * inch), strength("10.9", 0.01)];
    for (const key of ["proof", "tensile", "yield"] as const) near(sae[key] / iso[key], 1, 0.05);
    expect(strength("grade 5", 0.375 * inch).yield).toBeLessThan(0.75 * sae.yield);
    expect(strength("8.8", 0.01).yield).toBeLessThan(0.75 * iso.yield);
  });
});

describe("torque and preload", () => {
  const torque = (factor: number, diameterInch: number, force: number) =>
    torqueByNutFactor(force * poundForce, factor, diameterInch * inch) / (poundForce * inch);

  test("FAS-50: 3/8-24 grade 2 dry, 22.6 lbf ft (merchant's chart on SAE J429, read)", () =>
    near(torque(0.2, 0.375, 3622) / 12, 22.6, 0.06));
  test("FAS-51: 75 % of proof of 1/4-28 grade 2, 1502 lbf (same chart, read)", () => {
    // 0.75 × 0.0364 × 55000 with the table's rounded area is 1501.5, which the chart rounds up.
    const clamp = (0.75 * loads("1/4-28 UNF", "grade 2").proof) / poundForce;
    near((clamp * 0.0364) / (area("1/4-28 UNF") / inch ** 2), 1502, 1);
  });
  test("FAS-52: 1/4-28 grade 2 dry, 6.3 lbf ft (same chart, read)", () =>
    near(torque(0.2, 0.25, 1502) / 12, 6.3, 0.06));
  test("FAS-56: 3/4-16 at 25 kip, 3750 lbf in (Shigley example 8-3, from memory)", () =>
    near(torque(0.2, 0.75, 25000), 3750, 0.5));

  test("FAS-58: nut factors by condition (Shigley table 8-15, p. 439, read)", () => {
    const { black, zinc, lubricated, cadmium, antiSeize } = nutFactors;
    const factors = [black, zinc, lubricated, cadmium, antiSeize].map(({ factor }) => factor);
    expect(factors).toEqual([0.3, 0.2, 0.18, 0.16, 0.12]);
  });

  test("FAS-59 to FAS-61: ten lubricated bolts at 90 N·m scatter by ±16.9 % about 34.18 kN (Shigley table 8-14, read)", () => {
    const of = repeatability([30.3, 32.5, 32.5, 32.9, 32.9, 33.8, 34.3, 34.7, 37.4, 40.5]);
    near(of.mean, 34.18, 0.005);
    near(of.standardDeviation, 2.88, 0.005);
    near((200 * of.standardDeviation) / of.mean, 16.9, 0.1);
  });

  test.each([
    [0.3, 72.7],
    [0.25, 60.6],
    [0.2, 48.5],
    [0.15, 36.3],
    [0.1, 24.2],
  ])(
    "FAS-62: K %d on 0.19 in at 1275 lbf, %d lbf in (Mechanical Fastening, Joining, and Assembly, p. 85, read)",
    (factor, expected) => {
      near(torque(factor, 0.19, 1275), expected, 0.06);
      near(
        preloadByNutFactor(expected * poundForce * inch, factor, 0.19 * inch) / poundForce / 1275,
        1,
        0.002,
      );
    },
  );
});

describe("a bolted joint in service (Shigley 9th ed., example 8-3, p. 439, read)", () => {
  test("FAS-54: joint constant 0.32", () => near(jointConstant(6.5, 13.8), 0.32, 0.0005));

  test("FAS-55: bolt stress 72.17 ksi under 6 kip with 25 kip of preload", () => {
    const { bolt } = jointForces({ preload: 25, load: 6, constant: 0.32 });
    near(bolt / 0.373, 72.17, 0.01);
  });
});

describe("engagement", () => {
  const byPitchLine = (thread: string) => {
    const parsed = parseThread(thread);
    return stressArea(parsed) / (stripShare * pitchLineArea(parsed));
  };

  test("FAS-64: 3/8-24 in its like, 0.321 in (guide, formula read)", () =>
    near(byPitchLine("3/8-24 UNF") / inch, 0.321, 0.001));
  test("FAS-65: M10x1.5 in its like, 8.18 mm (guide, formula read)", () =>
    near(byPitchLine("M10x1.5") * 1000, 8.18, 0.01));

  test("FAS-66: 1/2-20 UNF 2A/2B by handbook formula 1, 0.400 in (Machinery's Handbook 24th ed., formula read; limits from memory)", () => {
    const thread = parseThread("1/2-20 UNF");
    const given = { at: 0.457 * inch, overlap: (0.4619 - 0.457) * inch };
    near(stressArea(thread) / (stripShare * stripArea(thread, given)) / inch, 0.4, 0.002);
    // Our own limits: the table rounds the hole to three decimals, 0.457 for 0.4574, hence 0.7 % more engagement.
    const fit = ordinaryFit(thread);
    near((fit?.nutMinorGreatest ?? 0) / inch, 0.457, 0.0005);
    near((fit?.boltPitchLeast ?? 0) / inch, 0.4619, 0.0001);
    near(engagementNeeded(thread, 1000e6, 1000e6).againstBolt / (0.4 * inch), 1, 0.01);
  });

  test("FAS-67: rule of thumb, 1 d in steel, 1½ d in cast iron, 2 d in aluminium (guide, read)", () => {
    expect(engagementByRule(0.01, "steel")).toBe(0.01);
    expect(engagementByRule(0.01, "castIron")).toBe(0.015);
    expect(engagementByRule(0.01, "aluminium")).toBe(0.02);
  });

  test("ISO 965-1 6g/6H limits of M10x1.5, mm (tables, from memory): within 6 µm of the rounded ones", () => {
    const fit = ordinaryFit(parseThread("M10x1.5"));
    near((fit?.boltPitchLeast ?? 0) * 1000, 8.862, 0.006);
    near((fit?.nutPitchGreatest ?? 0) * 1000, 9.206, 0.006);
    near((fit?.nutMinorGreatest ?? 0) * 1000, 8.676, 0.006);
    near((fit?.boltMajorLeast ?? 0) * 1000, 9.732, 0.006);
  });
});

describe("look-alike pairs, mm (basic sizes of ASME B1.1, ISO 261/724 and BS 84, from memory)", () => {
  test.each([
    ["FAS-68", "5/16-24 UNF", "M8x1", -0.0625, 0.0583, 0.47],
    ["FAS-69", "3/8-24 UNF", "M10x1", -0.475, 0.0583, 0.47],
    ["FAS-70", "7/16-20 UNF", "M12x1.25", -0.8875, 0.02, 0.16],
    ["FAS-71", "1/2-20 UNF", "M12x1.25", 0.7, 0.02, 0.16],
    ["FAS-72", "1/4-28 UNF", "M6x1", 0.35, -0.0929, 0.74],
    ["FAS-73", "5/16-18 UNC", "M8x1.25", -0.0625, 0.1611, 1.29],
  ])(
    "%s: %s and %s differ by so much, start in each other, and are refused",
    (_id, unified, metric, diameter, pitch, error) => {
      const [inchThread, millimetre] = [parseThread(unified), parseThread(metric)];
      const pair = threadPair(millimetre, inchThread);
      near(pair.diameterDifference * 1000, diameter, 0.0001);
      near(pair.pitchDifference * 1000, pitch, 0.0001);
      near(accumulatedPitchError(pair, 8) * 1000, error, 0.005);
      const verdicts = [pair.verdict, threadPair(inchThread, millimetre).verdict];
      expect(verdicts).toContain("neverMix");
      expect(verdicts).not.toContain("match");
    },
  );

  test("FAS-74: an M12x1.25 bolt in a 1/2-20 UNF nut overlaps by 0.3374 mm, 49 % of the flank: it screws on and feels right", () => {
    const pair = threadPair(parseThread("M12x1.25"), parseThread("1/2-20 UNF"));
    near(pair.overlap * 1000, 0.3374, 0.0001);
    near(pair.overlapShare, 0.49, 0.005);
    expect(pair.turns).toBeGreaterThan(8);
    expect(pair.verdict).toBe("neverMix");
  });

  test("FAS-75: UNC and BSW of one size and pitch have flanks of 60° and 55°, and are refused", () => {
    near(2 * halfFlankAngle("unified"), (60 * Math.PI) / 180, 1e-12);
    near(2 * halfFlankAngle("whitworth"), (55 * Math.PI) / 180, 1e-12);
    for (const size of ["1/4", "5/16", "3/8", "7/16"]) {
      const [unc, bsw] = [parseThread(`${size} UNC`), parseThread(`${size} BSW`)];
      expect(unc.pitch, size).toBe(bsw.pitch);
      expect(threadPair(unc, bsw)).toMatchObject({ verdict: "neverMix", turns: Number.POSITIVE_INFINITY });
    }
    expect(threadsPerInch.UNC["1/2"]).toBe(13);
    expect(threadsPerInch.BSW["1/2"]).toBe(12);
  });

  test("FAS-76: BSF is never of the same pitch as UNF", () => {
    const sizes = ["1/4", "5/16", "3/8", "7/16", "1/2"];
    expect(sizes.map((size) => threadsPerInch.BSF[size])).toEqual([26, 22, 20, 18, 16]);
    expect(sizes.map((size) => threadsPerInch.UNF[size])).toEqual([28, 24, 24, 20, 20]);
    for (const size of sizes)
      expect(threadPair(parseThread(`${size} BSF`), parseThread(`${size} UNF`)).verdict, size).not.toBe(
        "match",
      );
  });

  test("imperial and metric caliper bolts of nearly the same size are not interchangeable (common practice, no source)", () => {
    for (const [imperial, metric] of [
      ["3/8-24 UNF", "M10x1.25"],
      ["3/8-16 UNC", "M10x1.5"],
      ["7/16-20 UNF", "M12x1.25"],
      ["7/16-14 UNC", "M12x1.75"],
      ["1/2-20 UNF", "M12x1.25"],
      ["3/8 BSF", "M10x1.25"],
    ] as const) {
      const [one, other] = [parseThread(imperial), parseThread(metric)];
      expect([threadPair(one, other).verdict, threadPair(other, one).verdict], imperial).toContain(
        "neverMix",
      );
      expect([threadPair(one, other).verdict, threadPair(other, one).verdict], imperial).not.toContain(
        "match",
      );
    }
  });
});

test("basic sizes of M10x1.5 and 1/2-20 UNF: pitch 9.026 and 0.4675, hole 8.376 and 0.4459 (ISO 724, ASME B1.1, from memory)", () => {
  near(pitchDiameter(parseThread("M10x1.5")) * 1000, 9.026, 0.0005);
  near(nutMinorDiameter(parseThread("M10x1.5")) * 1000, 8.376, 0.0005);
  near(pitchDiameter(parseThread("1/2-20 UNF")) / inch, 0.4675, 0.00005);
  near(nutMinorDiameter(parseThread("1/2-20 UNF")) / inch, 0.4459, 0.00005);
});
