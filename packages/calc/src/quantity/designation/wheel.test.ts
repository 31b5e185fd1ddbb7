import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { atMost } from "../../property-runs.fixture";
import { NotationError } from "../notation-error";
import { parseDesignation } from "./designation";
import { designationKinds } from "./kind";
import { parseWheel, printWheel } from "./wheel";

describe("wheels as they are stamped, and as they are typed", () => {
  test.each([
    ["5½J x 14 ET 20", "5½J x 14 ET 20"],
    ["5.5J x 14 ET20", "5½J x 14 ET 20"],
    ["5,5 J X 14 et 20 mm", "5½J x 14 ET 20"],
    ["5 1/2 J x 14", "5½J x 14"],
    ["5-1/2J x 14", "5½J x 14"],
    ["5½Jx14", "5½J x 14"],
    ["5½J × 14", "5½J x 14"],
    ["5J-13", "5J x 13"],
    ["5.5J 14", "5½J x 14"],
    ["6 x 13", "6 x 13"],
    ["13 x 6", "6 x 13"],
    ["13x5½J ET 12", "5½J x 13 ET 12"],
    ["10 x 13", "10 x 13"],
    ["13 x 10", "13 x 10"],
    ["7 x 10", "7 x 10"],
    ["10 x 7", "7 x 10"],
    ["4.25 x 13", "4¼ x 13"],
    ["4¾JK x 15", "4¾JK x 15"],
    ["5.50 x 15", "5½ x 15"],
    ["5.5J x 14 ET-12", "5½J x 14 ET -12"],
    ["5.5J x 14 ET +12.5", "5½J x 14 ET 12.5"],
    ["5.5J x 14 ET 0", "5½J x 14 ET 0"],
  ])("%s is %s", (entered, canonical) => {
    const wheel = parseWheel(entered);
    expect(wheel.canonical).toBe(canonical);
    expect(parseWheel(canonical)).toEqual(wheel);
  });

  test("each part is kept in SI", () => {
    expect(parseWheel("5½J x 14 ET 20")).toEqual({
      kind: "wheel",
      width: 0.1397,
      flange: "J",
      rimDiameter: 0.3556,
      offset: 0.02,
      canonical: "5½J x 14 ET 20",
    });
    expect(parseWheel("6 x 13")).toMatchObject({ flange: null, offset: null });
  });

  test("every wheel that can be made reads into itself", () => {
    const wheel = fc.record({
      quarters: fc.integer({ min: 8, max: 39 }),
      flange: fc.option(fc.constantFrom("J", "JJ", "JK", "K", "B")),
      rim: fc.integer({ min: 10, max: 20 }),
      offset: fc.option(fc.integer({ min: -1000, max: 1000 })),
    });
    fc.assert(
      fc.property(wheel, ({ quarters, flange, rim, offset }) => {
        const text = printWheel({
          kind: "wheel",
          width: (quarters * 254) / 40_000,
          flange,
          rimDiameter: (rim * 254) / 10_000,
          offset: offset === null ? null : offset / 10_000,
        });
        expect(parseWheel(text).canonical).toBe(text);
      }),
    );
  });
});

describe("what is no wheel", () => {
  const any = "5½J x 14 ET 20 or 5.5J x 13";
  test.each([
    ["14", `"14": this is no wheel size; understood would be ${any}`],
    ["5½J x 14 4x100", `"5½J x 14 4x100": this is no wheel size; understood would be ${any}`],
    ["5 3/2 J x 14", `"5 3/2 J x 14": this is no wheel size; understood would be ${any}`],
    [
      "5.3J x 13",
      `"5.3J x 13": a rim 5.3 in wide is not made: 2 to 14 in quarters; understood would be ${any}`,
    ],
    [
      "1.5J x 13",
      `"1.5J x 13": a rim 1.5 in wide is not made: 2 to 14 in quarters; understood would be ${any}`,
    ],
    ["15J x 13", `"15J x 13": a rim 15 in wide is not made: 2 to 14 in quarters; understood would be ${any}`],
    ["5J x 21", `"5J x 21": a rim of 21 in is not made for cars: 10 to 20; understood would be ${any}`],
    [
      "5J x 14 ET 101",
      `"5J x 14 ET 101": an offset of 101 mm is beyond 100 mm either way; understood would be ${any}`,
    ],
    [
      "5J x 14 ET -101",
      `"5J x 14 ET -101": an offset of -101 mm is beyond 100 mm either way; understood would be ${any}`,
    ],
    ["", `"": nothing is entered; understood would be ${any}`],
  ])("%s", (entered, message) => {
    expect(() => parseWheel(entered)).toThrow(NotationError);
    expect(() => parseWheel(entered)).toThrow(expect.objectContaining({ message, entered }));
  });
});

test("one face reads each kind, and tells kinds apart", () => {
  expect(parseDesignation("thread", "M8").canonical).toBe("M8x1.25");
  expect(parseDesignation("grade", "8.8").canonical).toBe("class 8.8");
  expect(parseDesignation("tyre", "165sr13").canonical).toBe("165 SR 13");
  expect(parseDesignation("wheel", "5.5J x 14 ET20").canonical).toBe("5½J x 14 ET 20");
  const own = { thread: "M8", grade: "8.8", tyre: "165 SR 13", wheel: "5½J x 14" } as const;
  for (const kind of designationKinds) {
    for (const other of designationKinds) {
      if (kind === other) expect(parseDesignation(kind, own[kind]).kind).toBe(kind);
      else expect(() => parseDesignation(kind, own[other])).toThrow(NotationError);
    }
  }
});

test("whatever is typed reads, or is refused in our own words", () => {
  const scraps = fc.constantFrom(
    ..."0123456789",
    ".",
    "/",
    "-",
    " ",
    "x",
    "M",
    "R",
    "S",
    "J",
    "ET",
    "UNF",
    "BSF",
    "BA",
    "½",
    "class",
    "grade",
    "#",
    "LH",
    "PR",
    "T",
  );
  const typed = fc.oneof(
    fc.array(scraps, { maxLength: 10 }).map((parts) => parts.join("")),
    fc.string({ maxLength: 50 }),
  );
  fc.assert(
    fc.property(typed, fc.constantFrom(...designationKinds), (entered, kind) => {
      try {
        const found = parseDesignation(kind, entered);
        expect(parseDesignation(kind, found.canonical)).toEqual(found);
      } catch (error) {
        if (!(error instanceof NotationError)) throw error;
        expect(error.entered).toBe(entered);
        expect(error.understood.length).toBeGreaterThan(0);
      }
    }),
    atMost(3000),
  );
});
