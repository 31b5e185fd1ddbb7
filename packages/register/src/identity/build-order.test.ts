import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { buildOrderSlackDays, type DatedSerial, outOfOrder } from "./build-order";
import { shiftDays } from "./calendar";

const start = "1970-01-01";
/** A car finished on a day after the start, known to the day. */
const car = (serial: number, day: number, doubt = 0): DatedSerial => ({
  id: `S-${serial}`,
  serial,
  earliest: shiftDays(start, day - doubt),
  latest: shiftDays(start, day + doubt),
});
const inOrder = Array.from({ length: 20 }, (_, index) => car(index + 1, index * 20));

const others = Array.from({ length: 8 }, (_, index) => car(index + 10, 200 + index * 20));

describe("cars out of order with their serial", () => {
  test("are none where dates rise with serials", () => {
    expect(outOfOrder(inOrder)).toEqual([]);
  });

  test("are found alone, not those around them, with what the others allow", () => {
    const cars = [...inOrder.filter(({ serial }) => serial !== 5), car(5, 300)];
    const [found, ...others] = outOfOrder(cars);
    expect(others).toEqual([]);
    expect(found).toMatchObject({ id: "S-5", sure: "likely" });
    // Serial 4 was finished on day 60, serial 6 on day 100: worked by hand, with the slack on either side.
    expect(found?.window).toEqual({
      from: shiftDays(start, 60 - buildOrderSlackDays),
      to: shiftDays(start, 100 + buildOrderSlackDays),
    });
    expect(found?.days).toBe(200);
    // Disagrees with those of higher number finished more than the slack before it: days 100 to 220.
    expect(found?.against).toEqual(["S-6", "S-7", "S-8", "S-9", "S-10", "S-11", "S-12"]);
  });

  test("are both told where two disagree and no third decides", () => {
    // The others were finished so late that they go with either.
    const found = outOfOrder([car(1, 200), car(2, 0), ...others]);
    expect(found.map(({ id, sure, against }) => [id, sure, against])).toEqual([
      ["S-1", "either", ["S-2"]],
      ["S-2", "either", ["S-1"]],
    ]);
  });

  test("are none where dates do not rise with numbers at all, as in a fleet numbered as it was bought", () => {
    // Months of building of fourteen cars by their fleet number: 42 pairs rise, 39 fall.
    const months = [2, 3, 4, 5, 6, 1, 2, 3, 4, 5, 6, 1, 2, 3];
    expect(outOfOrder(months.map((month, index) => car(index + 1, month * 30)))).toEqual([]);
  });

  test("are none for a date that is too rough to disagree", () => {
    expect(outOfOrder([...inOrder, car(3, 300, 300)])).toEqual([]);
  });

  test("two cars of one serial have no order", () => {
    expect(outOfOrder([car(1, 0), car(1, 900)])).toEqual([]);
  });

  test("the slack itself is still in order, a day more is not", () => {
    expect(outOfOrder([car(1, 62), car(2, 0), ...others], 62)).toEqual([]);
    expect(outOfOrder([car(1, 63), car(2, 0), ...others], 62)).toHaveLength(2);
  });

  test("once taken out, what remains rises with the serial up to the slack; those who disagree with nobody stay", () => {
    const day = fc.tuple(
      fc.integer({ min: 1, max: 60 }),
      fc.integer({ min: 0, max: 40 }),
      fc.integer({ min: 0, max: 900 }),
    );
    const cars = fc
      .uniqueArray(day, { maxLength: 40, selector: ([serial]) => serial })
      // Every tenth lies anywhere, the others rise with their number give or take forty days.
      .map((list) =>
        list.map(([serial, noise, any], index) => car(serial, index % 10 === 9 ? any : serial * 15 + noise)),
      );
    fc.assert(
      fc.property(cars, fc.integer({ min: 0, max: 100 }), (list, slack) => {
        const out = new Set(outOfOrder(list, slack).map(({ id }) => id));
        const kept = list.filter(({ id }) => !out.has(id)).sort((a, b) => a.serial - b.serial);
        for (const [index, lower] of kept.entries())
          for (const higher of kept.slice(index + 1))
            expect(lower.earliest <= shiftDays(higher.latest, slack)).toBe(true);
        for (const one of outOfOrder(list, slack)) expect(one.against.length).toBeGreaterThan(0);
      }),
    );
  });
});
