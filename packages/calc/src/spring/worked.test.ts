import { expect, test } from "vitest";
import { worked } from "./worked";

test("rows become lines of the working; what was not worked out is left out, and so are empty unit and note", () => {
  const lines = worked([
    ["k", "Rate", "F/x", 2000, "rate", "N/mm", "linear"],
    ["K", "Roll rate", "k t²/2", null, "angularRate", "N·m/°"],
    ["r", "Ratio", "k₂/k₁", 0, "ratio"],
  ]);
  expect(lines).toEqual([
    {
      symbol: "k",
      label: "Rate",
      formula: "F/x",
      value: 2000,
      dimension: "rate",
      unit: "N/mm",
      note: "linear",
    },
    { symbol: "r", label: "Ratio", formula: "k₂/k₁", value: 0, dimension: "ratio" },
  ]);
});
