import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import type { Side } from "../characteristic/characteristic";
import type { Verdict } from "../deviation/deviation";
import { parseValue } from "../value/parse";
import { type ComparedValue, compareCars } from "./compare-cars";

function at(
  car: number,
  name: string,
  entered: string,
  { verdict = "asSpecified" as Verdict, side = "whole" as Side } = {},
): ComparedValue {
  const characteristic = builtInBook.find(name);
  const parsed = characteristic && parseValue(characteristic, entered);
  if (!parsed?.ok) throw new Error(`${name} is not "${entered}"`);
  return { car, characteristic: name, side, value: parsed.value, verdict };
}

const bar = "front.antiRollBar.diameter";
const face = "front.disc.face";
const compare = (cars: number, values: readonly ComparedValue[], reference?: number) =>
  compareCars({
    cars,
    values,
    book: builtInBook,
    system: "metric",
    ...(reference === undefined ? {} : { reference }),
  });

describe("cars side by side", () => {
  test("show only what differs, no sharper than it was read", () => {
    const found = compare(2, [
      at(0, bar, "9/16 in"),
      at(1, bar, "14.3 mm"),
      at(0, face, "plain"),
      at(1, face, "drilled", { verdict: "differentPart" }),
    ]);
    expect(found.same).toBe(1);
    expect(found.rows).toHaveLength(1);
    expect(found.rows[0]).toMatchObject({ characteristic: face, against: "Plain" });
    expect(found.rows[0]?.cells.map(({ text, differs }) => [text, differs])).toEqual([
      ["Plain", false],
      ["Cross-drilled", true],
    ]);
    expect(found.differing).toEqual([0, 1]);
  });

  test("hold each against the reference, whatever most have", () => {
    const values = [at(0, bar, "16 mm"), at(1, bar, "16 mm"), at(2, bar, "20 mm")];
    expect(compare(3, values).differing).toEqual([0, 0, 1]);
    const against = compare(3, values, 2);
    expect(against.differing).toEqual([1, 1, 0]);
    expect(against.rows[0]?.against).toBe("20 mm");
  });

  test("a car of which nothing is recorded is neither the same nor different", () => {
    const values = [at(0, bar, "16 mm"), at(1, bar, "16 mm"), at(0, face, "plain"), at(1, face, "drilled")];
    const found = compare(3, values);
    expect(found.same).toBe(0);
    expect(found.open).toEqual([{ label: "Front anti-roll bar diameter", side: "whole", unknown: [2] }]);
    expect(found.rows[0]?.unknown).toEqual([2]);
    expect(found.differing).toEqual([0, 0 + (found.rows[0]?.cells[1]?.differs ? 1 : 0), 0]);
  });

  test("what the reference does not say is open, not different", () => {
    const found = compare(3, [at(0, bar, "16 mm"), at(1, bar, "20 mm")], 2);
    expect(found.rows).toEqual([]);
    expect(found.open).toMatchObject([{ unknown: [2] }]);
  });

  test("have the values of a row in one notation, however each was entered", () => {
    const camber = (car: number, entered: string) => at(car, "front.camber", entered, { side: "left" });
    const [row] = compare(3, [camber(0, "-0.9°"), camber(1, "neg 30'"), camber(2, "-1°12'")], 0).rows;
    expect(row?.against).toBe("-0°54'");
    expect(row?.cells.map(({ text }) => text)).toEqual(["-0°54'", "-0°30'", "-1°12'"]);
  });

  test("tell how each stands against its own specification, the reference too, and where all are the same", () => {
    const out = { verdict: "outsideLimits" as const, side: "left" as const };
    const { standing, rows } = compare(
      2,
      [
        at(0, "front.camber", "-3°", out),
        at(1, "front.camber", "-3°", out),
        at(0, "rear.camber", "-1°", { verdict: "cannotTell", side: "left" }),
        at(1, "rear.camber", "-2°", out),
      ],
      0,
    );
    expect(rows).toHaveLength(1);
    expect(standing).toEqual([
      { outside: 1, cannotTell: 1 },
      { outside: 2, cannotTell: 0 },
    ]);
  });

  test("put the worst first: outside limits, then another part, then what most cars differ at", () => {
    const found = compare(
      3,
      [
        at(0, bar, "16 mm"),
        at(1, bar, "20 mm", { verdict: "differentPart" }),
        at(2, bar, "20 mm", { verdict: "differentPart" }),
        at(0, face, "plain"),
        at(1, face, "drilled", { verdict: "differentPart" }),
        at(2, face, "plain"),
        at(0, "front.camber", "0°", { side: "left" }),
        at(1, "front.camber", "0°", { side: "left" }),
        at(2, "front.camber", "-3°", { side: "left", verdict: "outsideLimits" }),
      ],
      0,
    );
    expect(found.rows.map(({ characteristic }) => characteristic)).toEqual(["front.camber", bar, face]);
  });
});
