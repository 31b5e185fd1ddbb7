import { describe, expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { starterChecks } from "../check/starter";
import { buildSheet } from "./build";
import { fieldsOnSheet, noteAt, remarksOnCar } from "./filled-sheet";

const model = buildSheet({
  club: { name: "Sandvær Register", unitSystem: "metric" },
  event: { name: "Open day", on: "2026-05-16", venue: "", ruleSet: "" },
  entry: { runningNumber: "7", group: "", className: "", driver: "", describedAs: "" },
  checks: starterChecks,
  book: builtInBook,
  recordHash: "",
  preparedAt: "2026-05-14T18:30:00Z",
});
const ids = model.stations.flatMap(({ checks }) => checks).map(({ id }) => id);

describe("remarks on a filled-in sheet", () => {
  test("belong to the check whose number is written, however it is written", () => {
    for (const written of ["3", " 3 ", "No. 3", "no 3", "3."])
      expect(noteAt(model, { "remark/2/check": written, "remark/2/text": "worn" }, ids[2] ?? "")).toBe(
        "worn",
      );
  });

  test("join what stands at the check itself, in order", () => {
    const fields = {
      "check/wheel-nuts/note": "one loose",
      "remark/1/check": String(ids.indexOf("wheel-nuts") + 1),
      "remark/1/text": "tightened",
    };
    expect(noteAt(model, fields, "wheel-nuts")).toBe("one loose\ntightened");
  });

  test("without a number, or with one that no check has, are of the car and none is lost", () => {
    const fields = {
      "remark/1/text": "clean car",
      "remark/9/check": "999",
      "remark/9/text": "no such check",
      "remark/10/check": "12a",
    };
    expect(remarksOnCar(model, fields)).toEqual(["clean car", "999: no such check", "12a: "]);
  });

  test("have fields that the sheet is known to have, and no others", () => {
    const known = fieldsOnSheet(model);
    for (const name of ["remark/1/text", "remark/40/check", "check/wheel-nuts/result", "decision"])
      expect(known.has(name)).toBe(true);
    for (const name of ["remark/41/text", "check/made-up/result"]) expect(known.has(name)).toBe(false);
  });
});
