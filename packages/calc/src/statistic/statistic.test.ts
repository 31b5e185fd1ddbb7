import fc from "fast-check";
import { bignumber, combinations, divide, fraction, quantileSeq } from "mathjs";
import { interquartileRange, mean, sampleCorrelation } from "simple-statistics";
import { describe, expect, test } from "vitest";
import { medianAbsoluteDeviation, medianOf, robustScale, robustSummary } from "../measurement/robust";
import { meanOf } from "../measurement/series";
import { association, binLimit, bins, type Fourfold, holdsUp, niceStep, quantileOf } from "./index";

const series = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 60 });
const cell = fc.integer({ min: 0, max: 30 });
const table = fc.record({ both: cell, firstOnly: cell, secondOnly: cell, neither: cell });

describe("a quantile", () => {
  test("is mathjs's, which has the same definition, for any share of any series", () => {
    fc.assert(
      fc.property(series, fc.integer({ min: 0, max: 1000 }), (values, thousandths) => {
        const share = thousandths / 1000;
        expect(quantileOf(values, share)).toBeCloseTo(Number(quantileSeq([...values], share)), 6);
      }),
    );
  });

  test("of one half is the median; of nothing or beyond its ends there is none", () => {
    fc.assert(
      fc.property(series, (values) => {
        expect(quantileOf(values, 0.5)).toBeCloseTo(medianOf(values), 6);
      }),
    );
    expect(() => quantileOf([], 0.5)).toThrow("the series has no reading");
    expect(() => quantileOf([1], 1.01)).toThrow("share must be between 0 and 1, but is 1.01");
    expect(() => quantileOf([1, Number.NaN], 0.5)).toThrow("readings.1");
  });
});

describe("the robust scale", () => {
  test("from deviations alone is the summary's own", () => {
    fc.assert(
      fc.property(series, (values) => {
        const median = medianOf(values);
        const deviation = meanOf(values.map((one) => Math.abs(one - median)));
        const { scale, scaleFrom } = robustSummary(values);
        expect(robustScale(medianAbsoluteDeviation(values), deviation)).toEqual({ scale, scaleFrom });
      }),
    );
  });
});

const binsOf = (values: readonly number[], finest = 0, widths?: readonly number[]) =>
  bins({
    count: values.length,
    least: Math.min(...values),
    most: Math.max(...values),
    interquartileRange: quantileOf(values, 0.75) - quantileOf(values, 0.25),
    finest,
    ...(widths === undefined ? {} : { widths }),
  });

describe("a histogram's classes", () => {
  test("hold every value, each in one class, and are never more than can be told apart", () => {
    fc.assert(
      fc.property(series, (values) => {
        const { from, width, count } = binsOf(values);
        expect(count).toBeGreaterThanOrEqual(1);
        expect(count).toBeLessThanOrEqual(binLimit);
        for (const value of values) {
          const place = Math.floor((value - from) / width + 1e-9);
          expect(place).toBeGreaterThanOrEqual(0);
          expect(place).toBeLessThan(count);
        }
      }),
    );
  });

  test("are as wide as Freedman and Diaconis say by simple-statistics's quartiles, rounded up to 1, 2 or 5", () => {
    // n = 4k + 1, where every definition of the quartiles agrees.
    const values = Array.from({ length: 201 }, (_, place) => 10 + Math.sin(place) * 3 + place / 100);
    const width = (2 * interquartileRange(values)) / 201 ** (1 / 3);
    const made = binsOf(values);
    expect(made.rule).toBe("freedmanDiaconis");
    expect(made.width).toBeGreaterThanOrEqual(width);
    expect(made.width / 2.5).toBeLessThanOrEqual(width);
    expect(mean(values)).toBeGreaterThan(made.from);
  });

  test.each([
    [0.13, 0.2],
    [0.2, 0.2],
    [0.3, 0.5],
    [7, 10],
    [51, 100],
    [0.000_012, 0.000_02],
  ])("%d is rounded up to %d", (raw, nice) => expect(niceStep(raw)).toBe(nice));

  test("take the widths the unit asks for, as long as one is wide enough", () => {
    const minutes = [1, 2, 5, 10, 15, 30, 60];
    expect(niceStep(12, minutes)).toBe(15);
    expect(niceStep(61, minutes)).toBe(100);
  });

  test("are never finer than the values are read, and one where all are equal", () => {
    expect(binsOf([1, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.7], 0.5).width).toBe(0.5);
    expect(binsOf([4, 4, 4])).toMatchObject({ count: 1, rule: "single" });
    expect(binsOf([4, 4, 4, 4, 4, 9]).rule).toBe("sturges");
  });

  test("are widened, not multiplied, by one wild value", () => {
    expect(binsOf([1, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1e6]).count).toBeLessThanOrEqual(binLimit);
  });

  test("are refused without a value, with ends the wrong way round, or with what is no number", () => {
    const good = { count: 3, least: 1, most: 2, interquartileRange: 0.5, finest: 0 };
    expect(() => bins({ ...good, count: 0 })).toThrow("there is no value");
    expect(() => bins({ ...good, least: 3 })).toThrow("least is 3, above most, 2");
    expect(() => bins({ ...good, most: Number.NaN })).toThrow("most must be a finite number");
    expect(() => bins({ ...good, finest: -1 })).toThrow("finest must not be negative");
  });
});

/** The hypergeometric probability by mathjs's exact arithmetic. */
function exactly({ both, firstOnly, secondOnly, neither }: Fourfold): number {
  const big = (n: number, k: number) => combinations(bignumber(n), bignumber(k));
  const [first, second, rest] = [both + firstOnly, both + secondOnly, secondOnly + neither];
  const probability = (k: number) =>
    big(first, k)
      .times(big(rest, second - k))
      .div(big(first + rest, second));
  const found = probability(both);
  let sum = bignumber(0);
  for (let k = Math.max(0, second - rest); k <= Math.min(first, second); k += 1) {
    const one = probability(k);
    if (one.lte(found.times(1.000_000_1))) sum = sum.plus(one);
  }
  return sum.toNumber();
}

describe("an association", () => {
  test("of the lady tasting tea (Fisher, The Design of Experiments, chapter II): 3 of 4 right is 17 in 35, two-sided", () => {
    const tea = association({ both: 3, firstOnly: 1, secondOnly: 1, neither: 3 });
    expect(tea.exactProbability).toBeCloseTo(34 / 70, 12);
    expect(tea.oddsRatio).toBe(9);
    expect(tea.phi).toBeCloseTo(0.5, 12);
    expect(tea.leastExpected).toBe(2);
  });

  test("of convictions among twins (Fisher 1935, as R's manual of fisher.test gives it; from memory): p = 0.0005367", () => {
    const twins = { both: 2, firstOnly: 10, secondOnly: 15, neither: 3 };
    expect(association(twins).exactProbability).toBeCloseTo(0.000_536_7, 7);
  });

  test("has the exact probability that mathjs works out in whole numbers", () => {
    fc.assert(
      fc.property(table, (counts) => {
        expect(association(counts).exactProbability).toBeCloseTo(exactly(counts), 8);
      }),
      { numRuns: 60 },
    );
  });

  test("has it for tens of thousands as well: by the ratios of neighbouring tables, without a factorial", () => {
    const cell = fc.integer({ min: 0, max: 20_000 });
    const large = fc.record({ both: cell, firstOnly: cell, secondOnly: cell, neither: cell });
    fc.assert(
      fc.property(large, ({ both, firstOnly, secondOnly, neither }) => {
        const [first, second, rest] = [both + firstOnly, both + secondOnly, secondOnly + neither];
        const [least, most] = [Math.max(0, second - rest), Math.min(first, second)];
        const mode = Math.min(
          most,
          Math.max(least, Math.floor(((first + 1) * (second + 1)) / (first + rest + 2))),
        );
        // Each table's probability as a multiple of the likeliest one's.
        const to = new Map([[mode, 1]]);
        const up = (k: number) => ((first - k) * (second - k)) / ((k + 1) * (rest - second + k + 1));
        for (let k = mode; k < most; k += 1) to.set(k + 1, (to.get(k) ?? 0) * up(k));
        for (let k = mode; k > least; k -= 1) to.set(k - 1, (to.get(k) ?? 0) / up(k - 1));
        const found = (to.get(both) ?? 0) * 1.000_000_1;
        const all = [...to.values()].reduce((sum, one) => sum + one, 0);
        const tails = [...to.values()].filter((one) => one <= found).reduce((sum, one) => sum + one, 0);
        const { exactProbability } = association({ both, firstOnly, secondOnly, neither });
        expect(Math.abs(exactProbability - tails / all)).toBeLessThan(1e-7);
        if (tails / all > 1e-200) expect(exactProbability / (tails / all)).toBeCloseTo(1, 5);
      }),
      { numRuns: 40 },
    );
  });

  test("has for phi the correlation that simple-statistics finds in the single cars", () => {
    fc.assert(
      fc.property(table, (counts) => {
        const { both, firstOnly, secondOnly, neither } = counts;
        const { phi } = association(counts);
        if (phi === undefined) return;
        const cars = [
          ...Array.from({ length: both }, () => [1, 1] as const),
          ...Array.from({ length: firstOnly }, () => [1, 0] as const),
          ...Array.from({ length: secondOnly }, () => [0, 1] as const),
          ...Array.from({ length: neither }, () => [0, 0] as const),
        ];
        const one = (place: 0 | 1) => cars.map((car) => car[place]);
        expect(phi).toBeCloseTo(sampleCorrelation(one(0), one(1)), 8);
      }),
    );
  });

  test("has the odds and the counts to be expected that mathjs's exact fractions give", () => {
    fc.assert(
      fc.property(table, (counts) => {
        const { both, firstOnly, secondOnly, neither } = counts;
        const { oddsRatio, leastExpected, count } = association(counts);
        if (oddsRatio !== undefined) {
          // (both to firstOnly) over (secondOnly to neither), neither of which divides by nought here.
          const odds = divide(fraction(both, firstOnly), fraction(secondOnly, Math.max(1, neither)));
          expect(oddsRatio).toBeCloseTo(neither === 0 ? 0 : Number(odds), 8);
        }
        if (count === 0) return;
        const rows = [both + firstOnly, secondOnly + neither];
        const columns = [both + secondOnly, firstOnly + neither];
        const expected = rows.flatMap((row) =>
          columns.map((column) => Number(fraction(row * column, count))),
        );
        expect(leastExpected).toBeCloseTo(Math.min(...expected), 10);
      }),
    );
  });

  test("says nothing of phi and odds where a property is everywhere or nowhere", () => {
    const all = association({ both: 7, firstOnly: 0, secondOnly: 3, neither: 0 });
    expect(all.phi).toBeUndefined();
    expect(all.oddsRatio).toBeUndefined();
    expect(all.exactProbability).toBeCloseTo(1, 12);
    expect(association({ both: 0, firstOnly: 0, secondOnly: 0, neither: 0 })).toMatchObject({ count: 0 });
    expect(() => association({ both: 1.5, firstOnly: 0, secondOnly: 0, neither: 0 })).toThrow("both");
  });

  test("holds up only if it would among as many as were looked for", () => {
    const twins = association({ both: 2, firstOnly: 10, secondOnly: 15, neither: 3 });
    expect(holdsUp(twins, 1)).toBe(true);
    expect(holdsUp(twins, 93)).toBe(true);
    expect(holdsUp(twins, 94)).toBe(false);
  });
});
