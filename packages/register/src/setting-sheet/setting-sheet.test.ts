import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { readSheetForm, type SheetCell } from "./read-form";
import { readSheetTable } from "./read-table";
import { isUsualSetting, sheetGroups } from "./row";

const book = builtInBook;
const basis = { book, units: "metric" as const, rims: new Map() };
const cell = (characteristic: string, side: SheetCell["side"], asLeft: string, asFound = ""): SheetCell => ({
  characteristic,
  side,
  asFound,
  asLeft,
  instrument: "",
});

describe("the rows of a setting sheet", () => {
  test("are every setting that is a quantity, front before rear before the whole car", () => {
    const groups = sheetGroups(book);
    expect(groups.map(({ key }) => key)).toEqual(["front", "rear", "car"]);
    const [front] = groups;
    expect(front?.rows.map(({ key }) => key)).toEqual(
      expect.arrayContaining(["front.camber", "front.toe", "tyres.front.pressure", "front.castor"]),
    );
    expect(
      groups.flatMap(({ rows }) => rows).every(({ setting, kind }) => setting && kind === "quantity"),
    ).toBe(true);
  });
});

test("a setting sheet begins with what is read whenever a car is set up", () => {
  const [front] = sheetGroups(book);
  const usual = front?.rows.filter(isUsualSetting).map(({ key }) => key);
  expect(usual).toEqual([
    "front.camber",
    "front.castor",
    "front.toe",
    "front.rideHeight",
    "tyres.front.pressure",
    "front.cornerWeight",
  ]);
  expect(front?.rows.slice(0, 6).map(({ key }) => key)).toEqual(usual);
  expect(front?.rows.length).toBeGreaterThan(6);
});

describe("a setting sheet's form", () => {
  test("keeps each reading as it was entered, repeats in order, as found apart from as left", () => {
    const { asFound, asLeft, problems } = readSheetForm(
      [cell("front.camber", "left", "-0°32'; -0°30' ;-0°34'", "+0°10'")],
      basis,
    );
    expect(problems).toEqual([]);
    expect(asLeft.map(({ repeat, entered }) => `${repeat} ${entered}`)).toEqual([
      "1 -0°32'",
      "2 -0°30'",
      "3 -0°34'",
    ]);
    expect(asFound.map(({ entered }) => entered)).toEqual(["+0°10'"]);
  });

  test.each([
    ["front.camber", "left", "40°", /too large to be believed/],
    ["front.toe", "left", "2 mm in per side", /rim/i],
    ["front.camber", "left", "steep", /steep/],
    ["front.camber", "left", "-3°; 2°", /lie 5° apart/],
    ["front.disc.diameter", "whole", "9 in", /no setting/],
  ] as const)("told of %s %s as %s, says what is wrong at its field", (key, side, entered, words) => {
    const { asLeft, problems } = readSheetForm([cell(key, side, entered)], basis);
    expect(asLeft).toEqual([]);
    expect(problems).toMatchObject([
      { field: `asLeft-${key.replaceAll(".", "-")}-${side}`, message: expect.stringMatching(words) },
    ]);
  });

  test("refuses two totals of one axle that differ, and takes two that are the same", () => {
    const toe = (left: string, right: string) =>
      readSheetForm([cell("front.toe", "left", left), cell("front.toe", "right", right)], basis).problems;
    expect(toe("toe-in 6' total", "toe-in 20' total")).toMatchObject([
      { field: "asLeft-front-toe-right", message: expect.stringMatching(/one figure for the axle/) },
    ]);
    expect(toe("toe-in 6' total", "toe-in 6' total")).toEqual([]);
    expect(toe("toe-in 6' per side", "toe-in 20' per side")).toEqual([]);
  });

  test("refuses weights that cannot stand on one axle", () => {
    const cells = [
      cell("front.cornerWeight", "left", "200 kg"),
      cell("front.cornerWeight", "right", "441 lb"),
    ];
    expect(readSheetForm(cells, basis).problems).toEqual([]);
    const slip = [cell("front.cornerWeight", "left", "60 kg"), cell("front.cornerWeight", "right", "441 kg")];
    expect(readSheetForm(slip, basis).problems).toMatchObject([{ field: "asLeft-front-cornerWeight-right" }]);
  });

  test("says everything that is wrong at once, and still reads the rest", () => {
    const { asLeft, problems } = readSheetForm(
      [
        cell("front.camber", "left", "40°"),
        cell("front.camber", "right", "-0°30'"),
        cell("front.toe", "left", "2 mm in"),
      ],
      basis,
    );
    expect(problems).toHaveLength(2);
    expect(asLeft).toHaveLength(1);
  });
});

describe("a table of readings", () => {
  const front = [
    { characteristic: "front.camber", side: "left", entered: "-0°30'" },
    { characteristic: "front.camber", side: "right", entered: "-0°20'" },
  ];

  test.each([
    [
      "a head that names the sides",
      [
        ["Setting", "Nearside", "Offside"],
        ["Front camber", "-0°30'", "-0°20'"],
      ],
    ],
    [
      "a side behind each name",
      [
        ["Front camber left", "-0°30'"],
        ["Front camber, right", "-0°20'"],
      ],
    ],
    [
      "settings in its head",
      [
        ["Front camber left", "Front camber right"],
        ["-0°30'", "-0°20'"],
      ],
    ],
  ])("with %s is read to the same readings", (_, rows) => {
    expect(readSheetTable(rows, book)).toEqual({ readings: front, problems: [] });
  });

  test("names what it cannot place, and reads the rest", () => {
    const { readings, problems } = readSheetTable(
      [
        ["Setting", "Left", "Right"],
        ["Front cambre", "1°", "1°"],
        ["Front camber", "-0°30'", "-0°20'"],
      ],
      book,
    );
    expect(problems).toEqual(['"Front cambre" is no setting this program knows.']);
    expect(readings).toEqual(front);
  });

  test("takes several rows below a head for repeats", () => {
    const { readings } = readSheetTable(
      [
        ["Front camber left", "Front camber right"],
        ["-0°30'", "-0°20'"],
        ["-0°32'", ""],
      ],
      book,
    );
    expect(readings[0]?.entered).toBe("-0°30'; -0°32'");
  });
});
