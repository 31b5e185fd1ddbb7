import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { atMost } from "../property-runs.fixture";
import { compoundNamed, compoundsOf, perLarger } from "./compound";
import { dimensions, type MeasuredDimension } from "./dimension";
import { NotationError } from "./notation-error";
import { parseQuantity, type Quantity } from "./parse";
import { printQuantity } from "./print";
import { stepToSi, toSi, type Unit, unitsOf } from "./unit";

// Thousands of entries a test: a second alone, more on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

const measured = dimensions.filter((dimension): dimension is MeasuredDimension => dimension !== "text");
const everyUnit = measured.flatMap((dimension) => unitsOf(dimension).map((unit) => ({ dimension, unit })));
const compounds = measured.flatMap((dimension) =>
  compoundsOf(dimension).map((symbol) => ({ dimension, symbol })),
);

/** A decimal figure as people write it, with how many decimals it has. */
const figure = fc
  .record({
    sign: fc.constantFrom("", "-"),
    whole: fc.integer({ min: 0, max: 999_999 }),
    decimals: fc.string({ unit: fc.constantFrom(..."0123456789"), maxLength: 5 }),
  })
  .map(({ sign, whole, decimals }) => ({
    text: `${sign}${whole}${decimals === "" ? "" : `.${decimals}`}`,
    step: 10 ** -decimals.length,
  }));

function reprint(quantity: Quantity, fractions = false): string {
  const { si, dimension, unit, resolution } = quantity;
  return printQuantity(si, { dimension, unit, resolution, fractions });
}

function withUnit(text: string, { symbol, tight }: Unit): string {
  return tight ? `${text}${symbol}` : `${text} ${symbol}`;
}

describe("printing what was read, and reading it again", () => {
  test("gives the very text back, for decimals in every unit of every dimension", () => {
    for (const { dimension, unit } of everyUnit) {
      fc.assert(
        fc.property(figure, ({ text, step }) => {
          fc.pre(dimension !== "temperature" || !text.startsWith("-"));
          const quantity = parseQuantity(withUnit(text, unit), dimension);
          expect(quantity.si).toBeCloseTo(toSi(Number(text), unit), 9);
          expect(quantity.resolution / stepToSi(step, unit)).toBeCloseTo(1, 9);
          const nought = Number(text) === 0 ? text.replace("-", "") : text;
          expect(reprint(quantity)).toBe(withUnit(nought, unit));
        }),
        atMost(20),
      );
    }
  });

  test("every other spelling of a unit reads to the same SI value and unit", () => {
    for (const { dimension, unit } of everyUnit) {
      for (const spelling of unit.also) {
        const [plain, other] = [`12.5 ${unit.symbol}`, `12.5 ${spelling}`].map((text) =>
          parseQuantity(text, dimension),
        );
        expect({ ...other, entered: "" }, spelling).toEqual({ ...plain, entered: "" });
      }
    }
  });

  test("gives the very text back for fractions of inches, halves to 128ths in lowest terms", () => {
    const power = fc.integer({ min: 1, max: 7 });
    fc.assert(
      fc.property(power, fc.nat(200), fc.nat(63), fc.constantFrom("", "-"), (n, whole, odd, sign) => {
        const denominator = 2 ** n;
        const numerator = (2 * odd + 1) % denominator;
        const entry = `${sign}${whole === 0 ? "" : `${whole} `}${numerator}/${denominator} in`;
        const quantity = parseQuantity(entry, "length");
        expect(reprint(quantity, true)).toBe(entry);
        expect(Math.abs(quantity.si)).toBeCloseTo((whole + numerator / denominator) * 0.0254, 12);
      }),
    );
  });

  test("gives the very text back for every compound", () => {
    for (const { dimension, symbol } of compounds) {
      const parts = compoundNamed(dimension, symbol) ?? [];
      const arc = parts.every(({ tight }) => tight);
      fc.assert(
        fc.property(
          fc.array(fc.nat(100_000), { minLength: 5, maxLength: 5 }),
          fc.boolean(),
          (counts, negative) => {
            const texts = parts.map((unit, index) => {
              const larger = parts[index - 1];
              const limit = larger === undefined ? 1000 : perLarger(larger, unit);
              const count = String((counts[index] ?? 0) % limit);
              return withUnit(arc && index > 0 ? count.padStart(2, "0") : count, unit);
            });
            const joined = texts.join(arc ? "" : " ");
            const entry = negative && /[1-9]/.test(joined) ? `-${joined}` : joined;
            expect(reprint(parseQuantity(entry, dimension))).toBe(entry);
          },
        ),
        atMost(20),
      );
    }
  });

  test("in any other unit of the dimension it stays within half the stated step", () => {
    for (const { dimension, unit } of everyUnit) {
      fc.assert(
        fc.property(
          figure,
          fc.constantFrom(...unitsOf(dimension)),
          fc.boolean(),
          ({ text }, other, fractions) => {
            fc.pre(dimension !== "temperature" || !text.startsWith("-"));
            const { si, resolution } = parseQuantity(withUnit(text, unit), dimension);
            // Twelve decimals are printed at most; a kilometre cannot show a thousandth of a micron.
            fc.pre(resolution / stepToSi(1, other) >= 1e-12 && Math.abs(si) / stepToSi(1, other) < 1e12);
            const printed = printQuantity(si, { dimension, unit: other.symbol, resolution, fractions });
            fc.pre(printed.replace(/\D/g, "").length <= 15); // more digits are refused on reading
            const again = parseQuantity(printed, dimension);
            const rounding = Math.abs(si) * 1e-11;
            expect(Math.abs(again.si - si)).toBeLessThanOrEqual(resolution / 2 + rounding);
          },
        ),
        atMost(20),
      );
    }
  });
});

describe("whatever is typed", () => {
  const scraps = fc.constantFrom(
    ..."0123456789",
    ".",
    ",",
    "/",
    "-",
    "+",
    " ",
    "'",
    '"',
    "°",
    "½",
    "⅛",
    "in",
    "mm",
    "ft",
    "psi",
    "lb",
    "cwt",
    "qr",
    "kg",
    "deg",
    "min",
    "neg",
    "N",
    "·",
    "m",
    "²",
    "x",
    "to",
    "±",
    "e",
    "%",
    "(A)",
    ":1",
  );
  const typed = fc.oneof(
    fc.array(scraps, { maxLength: 12 }).map((parts) => parts.join("")),
    fc.string({ maxLength: 20 }),
    fc.string({ unit: "binary", maxLength: 90 }),
  );

  test("either reads to a finite value with a step above nought, or says why not in our own words", () => {
    fc.assert(
      fc.property(typed, fc.constantFrom(...measured), (entered, dimension) => {
        try {
          const { si, resolution } = parseQuantity(entered, dimension);
          expect(Number.isFinite(si)).toBe(true);
          expect(resolution).toBeGreaterThan(0);
        } catch (error) {
          if (!(error instanceof NotationError)) throw error;
          expect(error.entered).toBe(entered);
          expect(error.place).toBeGreaterThanOrEqual(0);
          expect(error.place).toBeLessThanOrEqual(entered.length);
          expect(error.understood.length).toBeGreaterThan(0);
        }
      }),
      atMost(2000),
    );
  });

  test("a sign in front turns the value round and leaves the step", () => {
    fc.assert(
      fc.property(figure, fc.constantFrom("-", "neg ", "minus ", "− "), ({ text }, sign) => {
        const plain = text.replace("-", "");
        const there = parseQuantity(`${plain} mm`, "length");
        const back = parseQuantity(`${sign}${plain} mm`, "length");
        expect(back.si + there.si).toBe(0);
        expect(back.resolution).toBe(there.resolution);
      }),
    );
  });
});
