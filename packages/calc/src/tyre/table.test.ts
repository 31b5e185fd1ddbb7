import { describe, expect, test } from "vitest";
import { tyreDate } from "./date-code";
import { loadIndexRange, loadOfIndex } from "./load-index";
import { isSpeedSymbol, loadShareAtSpeed, speedOfSymbol, speedSymbols, tooFastFor } from "./speed-symbol";

const kmh = 1 / 3.6;

describe("load indices", () => {
  // Half a step, 1.44 %, is the bound of the reference rows (62, 75 to 95). Index 114 is 1180 kg on the page read and
  // 1.47 % off the series, so the whole table is held to its neighbours instead.
  test("run from 50 to 119, only grow, and keep the series 45·10^(LI/80) between their neighbours", () => {
    expect(loadIndexRange).toEqual({ lowest: 50, highest: 119 });
    expect([loadOfIndex(50), loadOfIndex(100), loadOfIndex(119)]).toEqual([190, 800, 1360]);
    for (let index = 50; index <= 119; index++) {
      if (index > 50) expect(loadOfIndex(index)).toBeGreaterThan(loadOfIndex(index - 1));
      const series = 45 * 10 ** (index / 80);
      if (index > 50) expect(series).toBeGreaterThan(loadOfIndex(index - 1));
      if (index < 119) expect(series).toBeLessThan(loadOfIndex(index + 1));
    }
  });

  test("71 to 110 as printed on a second tyre page (read)", () => {
    const page = `345 355 365 375 387 400 412 425 437 450 462 475 487 500 515 530 545 560 580 600 615 630 650 670 690
      710 730 750 775 800 825 850 875 900 925 950 975 1000 1030 1060`;
    expect(page.split(/\s+/).map(Number)).toEqual(Array.from({ length: 40 }, (_, i) => loadOfIndex(71 + i)));
  });

  test.each([49, 120, 82.5, Number.NaN])("%d is not in the table", (index) => {
    expect(() => loadOfIndex(index)).toThrow(`load index ${index} is not in the table: 50 to 119`);
  });
});

describe("speed symbols", () => {
  test("grow in their own order, in which H comes between U and V", () => {
    expect(speedSymbols.join("")).toBe("JKLMNPQRSTUHVWY");
    const speeds = speedSymbols.map(speedOfSymbol);
    expect(speeds.toSorted((one, other) => one - other)).toEqual(speeds);
    expect(
      [speedOfSymbol("J"), speedOfSymbol("K"), speedOfSymbol("L"), speedOfSymbol("M")].map((one) =>
        Math.round(one * 3.6),
      ),
    ).toEqual([100, 110, 120, 130]);
  });

  test("Z and lower case are none; neither is a property every object has", () => {
    expect(isSpeedSymbol("H")).toBe(true);
    for (const text of ["Z", "h", "", "toString"]) expect(isSpeedSymbol(text)).toBe(false);
  });

  test("a symbol's own speed is not too fast, however it was converted", () => {
    for (const symbol of speedSymbols) {
      const speed = (Math.round(speedOfSymbol(symbol) * 3.6) * 10) / 36;
      expect(tooFastFor(symbol, speed)).toBe(false);
      expect(tooFastFor(symbol, speed + 0.01)).toBe(true);
    }
    expect(() => tooFastFor("H", -1)).toThrow(/speed/);
  });
});

describe("load share at speed", () => {
  test("is whole up to the symbol below V, and up to where V, W and Y begin to fall", () => {
    expect(loadShareAtSpeed("H", 210 * kmh)).toBe(1);
    expect(loadShareAtSpeed("V", 0)).toBe(1);
    expect(loadShareAtSpeed("V", 210 * kmh)).toBeCloseTo(1, 12);
    expect(loadShareAtSpeed("W", 240 * kmh)).toBeCloseTo(1, 12);
    expect(loadShareAtSpeed("Y", 270 * kmh)).toBeCloseTo(1, 12);
    expect(loadShareAtSpeed("Y", 285 * kmh)).toBeCloseTo(0.925, 9);
    expect(loadShareAtSpeed("Y", 300 * kmh)).toBeCloseTo(0.85, 9);
  });

  test("is refused beyond the symbol", () => {
    expect(() => loadShareAtSpeed("S", 181 * kmh)).toThrow(
      "symbol S ends at 180 km/h, but 181 km/h is wanted",
    );
  });
});

describe("date code", () => {
  test("spaces round it do not matter, and 53 is a week", () => {
    expect(tyreDate(" 5315 ")).toEqual({ week: 53, year: 2015, yearDigit: 5 });
    expect(tyreDate("0100")).toEqual({ week: 1, year: 2000, yearDigit: 0 });
    expect(tyreDate("538").year).toBeNull();
  });

  test.each(["", "06", "06178", "O617", "06/17", "x0617", "0617x"])("%j is none", (code) => {
    expect(() => tyreDate(code)).toThrow(`"${code}" is no date code; understood would be 0617 or 027`);
  });

  test.each(["0017", "5417", "547"])("%s has no such week", (code) => {
    expect(() => tyreDate(code)).toThrow(/there is no week (0|54); 01 to 53 are weeks/);
  });
});
