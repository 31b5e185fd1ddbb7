import { describe, expect, test } from "vitest";
import { builtInCharacteristics } from "./dictionary/index";
import { characteristicSchema } from "./schema";

const quantity = {
  kind: "quantity",
  key: "hood.straps",
  label: "Hood straps",
  assembly: "body",
  sided: false,
  setting: false,
  removable: true,
  help: "How many leather straps hold the hood.",
  dimension: "count",
  units: { metric: "", imperial: "" },
};
const choices = (...list: readonly object[]) => ({
  ...quantity,
  kind: "choice",
  dimension: undefined,
  units: undefined,
  choices: list,
});

describe("the schema of characteristics", () => {
  test("takes every built-in one unchanged", () => {
    for (const one of builtInCharacteristics) expect(characteristicSchema.parse(one)).toEqual(one);
  });

  test.each([
    ["a unit of another dimension", { ...quantity, units: { metric: "mm", imperial: "" } }],
    ["an inverted range", { ...quantity, minimum: 3, maximum: 2 }],
    ["text as a dimension", { ...quantity, dimension: "text" }],
    ["toe that is no angle", { ...quantity, notation: "toe" }],
    ["a key of one word", { ...quantity, key: "straps" }],
    ["an unknown field", { ...quantity, colour: "red" }],
    ["a single choice", choices({ code: "one", label: "One" })],
    [
      "two choices of one spelling",
      choices({ code: "one", label: "One" }, { code: "two", label: "Two", also: ["ONE"] }),
    ],
  ])("refuses %s", (_, raw) => {
    const given = Object.fromEntries(Object.entries(raw).filter(([, part]) => part !== undefined));
    expect(characteristicSchema.safeParse(given).success).toBe(false);
  });
});
