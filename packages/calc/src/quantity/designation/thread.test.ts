import { describe, expect, test } from "vitest";
import { NotationError } from "../notation-error";
import { parseThread, printThread } from "./thread";
import { baSize, metricPitches, threadsPerInch } from "./thread-table";

/** Major diameter and pitch in mm, to ten digits. */
function sizesOf(entered: string): readonly [number, number] {
  const { majorDiameter, pitch } = parseThread(entered);
  return [Number((majorDiameter * 1000).toPrecision(10)), Number((pitch * 1000).toPrecision(10))];
}

describe("metric threads", () => {
  // ISO 261 coarse pitches, and its commonest fine ones, from a published pitch chart (read).
  test.each([
    [1.6, 0.35, [0.2]],
    [2, 0.4, [0.25]],
    [2.5, 0.45, [0.35]],
    [3, 0.5, [0.35]],
    [4, 0.7, [0.5]],
    [5, 0.8, [0.5]],
    [6, 1, [0.75]],
    [7, 1, []],
    [8, 1.25, [1, 0.75]],
    [10, 1.5, [1.25, 1]],
    [12, 1.75, [1.5, 1.25]],
    [14, 2, [1.5]],
    [16, 2, [1.5]],
    [18, 2.5, [2, 1.5]],
    [20, 2.5, [2, 1.5]],
    [22, 2.5, [2, 1.5]],
    [24, 3, [2]],
    [27, 3, [2]],
    [30, 3.5, [2]],
    [33, 3.5, [2]],
    [36, 4, [3]],
    [39, 4, [3]],
    [42, 4.5, [3]],
    [45, 4.5, [3]],
    [48, 5, [3]],
    [52, 5, [4]],
  ])("M%d has the coarse pitch %d and the fine %j", (diameter, coarse, fine) => {
    expect(sizesOf(`M${diameter}`)).toEqual([diameter, coarse]);
    for (const pitch of fine) expect(sizesOf(`M${diameter}x${pitch}`)).toEqual([diameter, pitch]);
  });

  test("every diameter's coarse pitch is its largest", () => {
    for (const { coarse, fine } of metricPitches.values()) {
      if (coarse !== undefined) expect(Math.max(...fine)).toBeLessThan(coarse);
      expect(fine).toEqual([...fine].sort((a, b) => b - a));
    }
  });

  test.each(["M10x1.25", "m10 x 1,25", "M10×1.25", "M 10 x 1.25", " M10-1.25 ", "M10*1.25", "M10/1.25"])(
    "%s is M10x1.25",
    (entered) => {
      expect(parseThread(entered)).toEqual({
        kind: "thread",
        system: "metric",
        series: "M",
        size: "10",
        majorDiameter: 0.01,
        pitch: 0.00125,
        hand: "right",
        canonical: "M10x1.25",
      });
    },
  );
});

describe("inch threads", () => {
  // BSW and BSF: a gauge maker's table on BS 84:2007 (read). BSF 9/32 and BSW below 1/8 from memory or another table.
  test.each([
    ["1/8", 40, null],
    ["3/16", 24, 32],
    ["7/32", null, 28],
    ["1/4", 20, 26],
    ["5/16", 18, 22],
    ["3/8", 16, 20],
    ["7/16", 14, 18],
    ["1/2", 12, 16],
    ["9/16", 12, 16],
    ["5/8", 11, 14],
    ["11/16", 11, 14],
    ["3/4", 10, 12],
    ["7/8", 9, 11],
    ["1", 8, 10],
    ["1 1/8", 7, 9],
    ["1 1/4", 7, 9],
    ["1 3/8", null, 8],
    ["1 1/2", 6, 8],
  ])("%s in: %s threads per inch BSW, %s BSF", (size, bsw, bsf) => {
    if (bsw !== null) expect(threadsPerInch.BSW[size]).toBe(bsw);
    if (bsf !== null) expect(threadsPerInch.BSF[size]).toBe(bsf);
  });

  // Unified: Machinery's Handbook 29th ed., p. 1816, as reproduced in a table of UNC and UNF sizes (read).
  test.each([
    ["#0", null, 80, 0.06],
    ["#1", 64, 72, 0.073],
    ["#2", 56, 64, 0.086],
    ["#3", 48, 56, 0.099],
    ["#4", 40, 48, 0.112],
    ["#5", 40, 44, 0.125],
    ["#6", 32, 40, 0.138],
    ["#8", 32, 36, 0.164],
    ["#10", 24, 32, 0.19],
    ["#12", 24, 28, 0.216],
    ["1/4", 20, 28, 0.25],
    ["5/16", 18, 24, 0.3125],
    ["3/8", 16, 24, 0.375],
    ["7/16", 14, 20, 0.4375],
    ["1/2", 13, 20, 0.5],
    ["9/16", 12, 18, 0.5625],
    ["5/8", 11, 18, 0.625],
    ["3/4", 10, 16, 0.75],
    ["7/8", 9, 14, 0.875],
    ["1", 8, 12, 1],
    ["1 1/8", 7, 12, 1.125],
    ["1 1/4", 7, 12, 1.25],
    ["1 3/8", 6, 12, 1.375],
    ["1 1/2", 6, 12, 1.5],
  ])("%s: %s UNC, %s UNF, %d in", (size, unc, unf, diameter) => {
    expect(threadsPerInch.UNC[size] ?? null).toBe(unc);
    expect(threadsPerInch.UNF[size]).toBe(unf);
    expect(sizesOf(`${size} UNF`)).toEqual([
      Number((diameter * 25.4).toPrecision(10)),
      Number((25.4 / unf).toPrecision(10)),
    ]);
  });

  // FAS-68, FAS-69: nominal sizes of the look-alike pairs (from memory).
  test("5/16-24 UNF and M8x1, 3/8-24 UNF and M10x1 are alike and not the same", () => {
    const [five, eight] = [sizesOf("5/16-24 UNF"), sizesOf("M8x1")];
    expect(five[0] - eight[0]).toBeCloseTo(-0.0625, 4);
    expect(five[1] - eight[1]).toBeCloseTo(0.0583, 4);
    const [three, ten] = [sizesOf("3/8-24 UNF"), sizesOf("M10x1")];
    expect(three[0] - ten[0]).toBeCloseTo(-0.475, 4);
    expect(three[1] - ten[1]).toBeCloseTo(0.0583, 4);
  });

  test.each([
    ["3/8-24 UNF", "3/8-24 UNF"],
    ["3/8 unf", "3/8-24 UNF"],
    ['3/8" - 24 UNF', "3/8-24 UNF"],
    ["3/8 in x 24 UNF", "3/8-24 UNF"],
    ["3/8 x 24 tpi UNF", "3/8-24 UNF"],
    ["3/8 UNF 24 tpi", "3/8-24 UNF"],
    ["3/8-24UNF", "3/8-24 UNF"],
    ["5/16 UNC", "5/16-18 UNC"],
    ["1-1/8-12 UNF", "1 1/8-12 UNF"],
    ["1 1/8 UNF", "1 1/8-12 UNF"],
    ["1-12 UNF", "1-12 UNF"],
    ["1 BSF", "1-10 BSF"],
    ["#10-32 UNF", "#10-32 UNF"],
    ["10-32 UNF", "#10-32 UNF"],
    ["No. 10 UNF", "#10-32 UNF"],
    ["1/4 BSF", "1/4-26 BSF"],
    ["1/4 Whitworth", "1/4-20 BSW"],
    ["1/4 whit", "1/4-20 BSW"],
    ["1/2 UNF LH", "1/2-20 UNF LH"],
    ["1/2-20 UNF left hand", "1/2-20 UNF LH"],
    ["M12x1.5 left", "M12x1.5 LH"],
    ["M12x1.5-LH", "M12x1.5 LH"],
    ["2 BA LH", "2 BA LH"],
    ["2BA", "2 BA"],
    ["BA 2", "2 BA"],
    ["no 0 ba", "0 BA"],
  ])("%s is %s", (entered, canonical) => {
    expect(parseThread(entered).canonical).toBe(canonical);
  });

  test.each([
    ["3/8 UNF", "unified"],
    ["3/8 UNC", "unified"],
    ["3/8 BSF", "whitworth"],
    ["3/8 BSW", "whitworth"],
    ["2 BA", "BA"],
  ])("%s has the %s form", (entered, system) => {
    expect(parseThread(entered).system).toBe(system);
  });
});

describe("British Association threads", () => {
  // Major diameters in inches and threads per inch as an encyclopaedia's BA table gives them (read). Its threads per
  // inch come from pitches rounded to 0.0001 in (9 BA: 0.39 mm is 0.0154 in, 64.94 to the inch), hence half of that.
  test.each([
    [0, 0.2362, 25.38],
    [1, 0.2087, 28.25],
    [2, 0.185, 31.35],
    [3, 0.1614, 34.84],
    [4, 0.1417, 38.46],
    [5, 0.126, 43.1],
    [6, 0.1102, 47.85],
    [7, 0.0984, 52.91],
    [8, 0.0866, 59.17],
    [9, 0.0748, 64.94],
    [10, 0.0669, 72.46],
    [11, 0.0591, 81.97],
    [12, 0.0511, 90.91],
  ])("%d BA is %d in thick with %d threads per inch", (number, diameter, tpi) => {
    const { majorDiameter, pitch } = parseThread(`${number} BA`);
    expect(Math.abs(majorDiameter / 0.0254 - diameter)).toBeLessThan(1.1e-4);
    expect(Math.abs(pitch / 0.0254 - 1 / tpi)).toBeLessThan(0.00005 + 1e-6);
  });

  test("BS 93 rounds 0.9ⁿ and 6 p^1.2 to two figures (from memory)", () => {
    expect(baSize(0)).toEqual({ pitch: 1, diameter: 6 });
    expect(baSize(2)).toEqual({ pitch: 0.81, diameter: 4.7 });
    expect(baSize(6)).toEqual({ pitch: 0.53, diameter: 2.8 });
    expect(baSize(16)).toEqual({ pitch: 0.19, diameter: 0.79 });
  });
});

describe("what is no thread", () => {
  test.each([
    [
      "M10x1.3",
      `"M10x1.3": ISO 261 gives M10 no pitch of 1.3 mm; understood would be M10x1.5 or M10x1.25 or M10x1 or M10x0.75`,
    ],
    ["M9.5", `"M9.5": ISO 261 has no M9.5; understood would be M9 or M10`],
    [
      "M15",
      `"M15": M15 has no coarse pitch, so the pitch must be stated; understood would be M15x1.5 or M15x1`,
    ],
    [
      "1/4-20",
      `"1/4-20": the series is missing (UNC, UNF, BSW or BSF): sizes and even pitches are alike where the threads are not; understood would be 1/4-20 UNC or 1/4-20 BSW`,
    ],
    [
      "3/8-24",
      `"3/8-24": the series is missing (UNC, UNF, BSW or BSF): sizes and even pitches are alike where the threads are not; understood would be 3/8-24 UNF`,
    ],
    [
      "9/32",
      `"9/32": the series is missing (UNC, UNF, BSW or BSF): sizes and even pitches are alike where the threads are not; understood would be 9/32 BSF`,
    ],
    [
      "3/8-99",
      `"3/8-99": the series is missing (UNC, UNF, BSW or BSF): sizes and even pitches are alike where the threads are not; understood would be 3/8 UNC or 3/8 UNF or 3/8 BSW or 3/8 BSF`,
    ],
    [
      "77/78",
      `"77/78": the series is missing (UNC, UNF, BSW or BSF): sizes and even pitches are alike where the threads are not; understood would be M10x1.25 or 3/8-24 UNF or 1/4 BSF or 2 BA`,
    ],
    [
      "5/16-24 UNC",
      `"5/16-24 UNC": 5/16 UNC has 18 threads per inch, not 24; understood would be 5/16-18 UNC or 5/16-24 UNF`,
    ],
    ["9/32 UNF", `"9/32 UNF": UNF has no size 9/32; understood would be 1/4 UNF or 5/16 UNF`],
    ["#0 UNC", `"#0 UNC": UNC has no size #0; understood would be #1 UNC or #2 UNC`],
    ["1/0 UNF", `"1/0 UNF": UNF has no size 1/0; understood would be 1 1/2 UNF or 1 3/8 UNF`],
    ["17 BA", `"17 BA": BA threads are read from 0 to 16; understood would be 2 BA`],
    [
      "M10x1.25x30",
      `"M10x1.25x30": this is no thread; understood would be M10x1.25 or 3/8-24 UNF or 1/4 BSF or 2 BA`,
    ],
    [
      "1/8 BSP",
      `"1/8 BSP": this is no thread; understood would be M10x1.25 or 3/8-24 UNF or 1/4 BSF or 2 BA`,
    ],
    ["", `"": nothing is entered; understood would be M10x1.25 or 3/8-24 UNF or 1/4 BSF or 2 BA`],
  ])("%s", (entered, message) => {
    expect(() => parseThread(entered)).toThrow(NotationError);
    expect(() => parseThread(entered)).toThrow(
      expect.objectContaining({ message, entered, name: "NotationError" }),
    );
  });

  test("each with a code of its own", () => {
    expect(() => parseThread("M9.5")).toThrow(
      expect.objectContaining({ code: "UNKNOWN_DESIGNATION", place: 0 }),
    );
    expect(() => parseThread("")).toThrow(expect.objectContaining({ code: "EMPTY", place: 0 }));
    expect(() => parseThread("x".repeat(41))).toThrow(
      expect.objectContaining({ code: "TOO_LONG", place: 40 }),
    );
  });

  test("what is longer than 40 characters", () => {
    expect(parseThread(`${" ".repeat(38)}M6`).canonical).toBe("M6x1");
    expect(() => parseThread(`${" ".repeat(39)}M6`)).toThrow("at most 40 characters, this text 41");
  });
});

test("the canonical text of every standard thread reads into that thread", () => {
  const metric = [...metricPitches].flatMap(([diameter, { coarse, fine }]) =>
    [coarse, ...fine].flatMap((pitch) => (pitch === undefined ? [] : [`M${diameter}x${pitch}`])),
  );
  const inch = Object.entries(threadsPerInch).flatMap(([series, sizes]) =>
    Object.entries(sizes).map(([size, tpi]) => `${size}-${tpi} ${series}`),
  );
  const ba = Array.from({ length: 17 }, (_, number) => `${number} BA`);
  const all = [...metric, ...inch, ...ba].flatMap((text) => [text, `${text} LH`]);
  for (const text of all) {
    const thread = parseThread(text);
    expect(thread.canonical).toBe(text);
    expect(printThread(thread)).toBe(text);
    expect(parseThread(thread.canonical)).toEqual(thread);
  }
  expect(new Set(all).size).toBe(all.length);
});
