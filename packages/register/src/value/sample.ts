import { builtInBook } from "../characteristic/book";
import type { Characteristic } from "../characteristic/characteristic";
import { type ParseValueOptions, parseValue } from "./parse";
import type { Value } from "./value";

/** For tests: a built-in characteristic, which must be there. */
export function sampleCharacteristic(key: string): Characteristic {
  const found = builtInBook.find(key);
  if (found === undefined) throw new Error(`no built-in characteristic ${key}`);
  return found;
}

/** For tests: an entry of a built-in characteristic, which must read. */
export function sampleValue(key: string, entered: string, options: ParseValueOptions = {}): Value {
  const parsed = parseValue(sampleCharacteristic(key), entered, options);
  if (!parsed.ok) throw new Error(parsed.problem.message);
  return parsed.value;
}
