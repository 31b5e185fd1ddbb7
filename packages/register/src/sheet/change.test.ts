import { describe, expect, test } from "vitest";
import { sheetChanges } from "./change";
import type { SheetModel } from "./sheet-model";

const model = (changes: Partial<SheetModel> = {}): SheetModel => ({
  layoutVersion: 3,
  recordHash: "0".repeat(64),
  preparedAt: "2026-05-14T18:30:00Z",
  code: "7K2M9QXT",
  link: "",
  club: "Sandvær Register",
  event: { name: "Vårløp", on: "16 May 2026", venue: "Grusvik", ruleSet: "Starter" },
  entry: { runningNumber: "42", group: "B", className: "C", driver: "Åse" },
  car: {
    chassis: "S2-1",
    marque: "",
    series: "",
    built: "",
    body: "",
    colour: "",
    registration: "",
    onRegister: true,
  },
  leaders: [],
  deviations: [
    {
      label: "Front camber",
      side: "left",
      leader: 1,
      verdict: "outsideLimits",
      verdictText: "outside limits",
      specified: "0°00'",
      actual: "−1°15'",
      difference: "",
      since: "",
    },
  ],
  notRecorded: 0,
  settings: [],
  stations: [],
  cautions: [],
  ...changes,
});

describe("what changed since a sheet was printed", () => {
  test("is nothing where the words are the same, whatever its code and time", () => {
    expect(sheetChanges(model(), model({ code: "00000000", preparedAt: "2026-05-15T00:00:00Z" }))).toEqual(
      [],
    );
  });

  test("is told with what the sheet says and what the record says now", () => {
    const [deviation] = model().deviations;
    if (deviation === undefined) throw new Error("the model lost its deviation");
    const now = model({ deviations: [{ ...deviation, actual: "−0°20'", verdictText: "inside limits" }] });
    expect(sheetChanges(model(), now)).toEqual([
      {
        what: "Front camber, left",
        printed: "−1°15', outside limits, specified 0°00'",
        now: "−0°20', inside limits, specified 0°00'",
      },
    ]);
  });

  test("tells what came and what went", () => {
    const gone = sheetChanges(model(), model({ deviations: [] }));
    expect(gone.map(({ now }) => now)).toEqual([""]);
    const came = sheetChanges(model({ deviations: [] }), model());
    expect(came.map(({ printed }) => printed)).toEqual([""]);
  });

  test("tells of a number and a driver changed on the entry list", () => {
    const now = model({ entry: { runningNumber: "43", group: "B", className: "C", driver: "Tõnu" } });
    expect(sheetChanges(model(), now).map(({ what }) => what)).toEqual(["Running number", "Driver"]);
  });
});
