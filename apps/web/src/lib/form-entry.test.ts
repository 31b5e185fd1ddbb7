import { describe, expect, test } from "vitest";
import { enteredOf, typedOf } from "./form-entry";

function form(...fields: readonly (readonly [string, string])[]): FormData {
  const data = new FormData();
  for (const [name, value] of fields) data.append(name, value);
  return data;
}

describe("what a form says", () => {
  test("is an object by the names of its fields, lists by number with gaps closed", () => {
    const data = form(
      ["built", "c. 1971"],
      ["numbers.4.kind", "engine"],
      ["numbers.10.kind", "body"],
      ["numbers.4.from", ""],
    );
    expect(enteredOf(data)).toEqual({
      built: "c. 1971",
      numbers: [{ kind: "engine", from: "" }, { kind: "body" }],
    });
  });

  test("has a list of strings where the name says so, even for one", () => {
    expect(enteredOf(form(["options[]", "GT"]))).toEqual({ options: ["GT"] });
    expect(enteredOf(form(["options[]", "GT"], ["options[]", "LHD"]))).toEqual({ options: ["GT", "LHD"] });
  });

  test("takes the last of a field that came twice: a box behind its hidden no", () => {
    expect(enteredOf(form(["open", "no"], ["open", "yes"]))).toEqual({ open: "yes" });
  });

  test("never reaches a prototype", () => {
    const entered = enteredOf<Record<string, unknown>>(
      form(["__proto__.admin", "yes"], ["a.constructor.b", "x"]),
    );
    expect(entered).toEqual({});
    expect(({} as Record<string, unknown>).admin).toBeUndefined();
  });

  test("leaves the framework's own fields out", () => {
    expect(typedOf(form(["$ACTION_REF_1", ""], ["built", "1971"]))).toEqual({ built: ["1971"] });
  });

  test("of thousands of fields is refused", () => {
    expect(() => enteredOf(form(...Array.from({ length: 2_001 }, (_, i) => [`f${i}`, ""] as const)))).toThrow(
      RangeError,
    );
  });
});
