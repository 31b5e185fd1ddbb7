import { expect, test } from "vitest";
import { builtInBook } from "../characteristic/book";
import { parseValue } from "./parse";
import { fulfils } from "./same";
import type { Value } from "./value";

function value(key: string, entered: string): Value {
  const characteristic = builtInBook.find(key);
  const parsed = characteristic && parseValue(characteristic, entered);
  if (!parsed?.ok) throw new Error(`${entered} is no value of ${key}`);
  return parsed.value;
}

test.each([
  ["tyres.front.size", "175/70 R 14 84H", "175/70 R 14", true],
  ["tyres.front.size", "175/70 R 14", "175/70 R 14 84H", false],
  ["tyres.front.size", "185/70 R 14 84H", "175/70 R 14", false],
  ["wheels.front.size", "5½J x 14 ET 20", "5½J x 14", true],
  ["wheels.front.size", "6J x 14 ET 20", "5½J x 14", false],
  ["front.antiRollBar.diameter", "16 mm", "16 mm", true],
])("of %s, %s where %s is asked for: %s", (key, actual, asked, expected) => {
  expect(fulfils(value(key, actual), value(key, asked))).toBe(expected);
});
