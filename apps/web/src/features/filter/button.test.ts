import type { DraftEdit } from "@trunnion/register";
import { expect, test } from "vitest";
import { buttonValue, editOf } from "./button";

test.each<[DraftEdit]>([
  [{ do: "addPart", at: "" }],
  [{ do: "addGroup", at: "of.0.of.2" }],
  [{ do: "remove", at: "of.11" }],
  [{ do: "pick", at: "of.0", characteristic: "Front anti-roll bar diameter" }],
])("a button for %o says so and is understood", (edit) => {
  expect(editOf(buttonValue(edit))).toEqual(edit);
});

test.each([["refresh"], [""], ["remove __proto__"], ["addPart of.x"], ["dance of.0"]])(
  "%j is no edit",
  (value) => {
    expect(editOf(value)).toBeUndefined();
  },
);
