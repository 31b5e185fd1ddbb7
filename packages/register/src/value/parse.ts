import { NotationError, parseDesignation } from "@trunnion/calc";
import type {
  Characteristic,
  ChoiceCharacteristic,
  DateCharacteristic,
  DesignationCharacteristic,
  TextCharacteristic,
} from "../characteristic/characteristic";
import { foldName } from "../characteristic/fold-name";
import { parseDateEntry } from "./date-entry";
import { type ParsedLimit, type ParseValueOptions, parseQuantityValue } from "./parse-quantity";
import { type ParsedValue, problemWith } from "./problem";

export { type ParsedLimit, type ParseValueOptions, sayUnusual, usualBeside } from "./parse-quantity";
export type { ParsedValue, ValueProblem, ValueProblemCode } from "./problem";
export { valueProblemCodes } from "./problem";

/** Words by which people say that something is not there. */
const absenceWords = new Set(
  ["none", "not fitted", "removed", "without", "deleted", "omitted", "left off", "nil", "no"].map(foldName),
);
const dash = /^[-‐‑–—−]+$/;

function saysAbsent(text: string): boolean {
  return dash.test(text) || absenceWords.has(foldName(text));
}

const spellings = new WeakMap<ChoiceCharacteristic, ReadonlyMap<string, string>>();

/** Folded spelling → code; kept, since an import asks for it once per cell. */
function spellingsOf(characteristic: ChoiceCharacteristic): ReadonlyMap<string, string> {
  const known = spellings.get(characteristic);
  if (known !== undefined) return known;
  const made = new Map(
    characteristic.choices.flatMap(({ code, label, also = [] }) =>
      [code, label, ...also].map((word) => [foldName(word), code] as const),
    ),
  );
  spellings.set(characteristic, made);
  return made;
}

function choiceOf(characteristic: ChoiceCharacteristic, text: string): string | undefined {
  return spellingsOf(characteristic).get(foldName(text));
}

function parseChoice(characteristic: ChoiceCharacteristic, entered: string): ParsedValue {
  const code = choiceOf(characteristic, entered);
  if (code !== undefined) return { ok: true, value: { kind: "choice", code, entered } };
  const labels = characteristic.choices.map(({ label }) => label);
  const expected = `one of: ${[...labels, ...(characteristic.removable ? ["not fitted"] : [])].join("; ")}`;
  return problemWith(characteristic, entered, {
    code: "NOT_A_CHOICE",
    is: "is none of the choices",
    expected,
  });
}

function parseDesignationValue(characteristic: DesignationCharacteristic, entered: string): ParsedValue {
  try {
    const { canonical } = parseDesignation(characteristic.designation, entered);
    return { ok: true, value: { kind: "designation", canonical, entered } };
  } catch (error) {
    if (!(error instanceof NotationError)) throw error;
    const is = `cannot be read: ${error.problem}`;
    return problemWith(characteristic, entered, {
      code: "NOTATION",
      is,
      expected: error.understood.join(" or "),
    });
  }
}

function parseText(characteristic: TextCharacteristic, entered: string): ParsedValue {
  const { maximumLength } = characteristic;
  const text = entered.normalize("NFC").replace(/\s+/g, " ");
  const characters = [...text].length;
  if (characters > maximumLength) {
    const is = `has ${characters} characters`;
    return problemWith(characteristic, entered, {
      code: "NOT_A_TEXT",
      is,
      expected: `at most ${maximumLength}`,
    });
  }
  if (/\p{Cc}/u.test(text)) {
    const is = "holds control characters";
    return problemWith(characteristic, entered, { code: "NOT_A_TEXT", is, expected: "plain text" });
  }
  return { ok: true, value: { kind: "text", text, entered } };
}

function parseDate(characteristic: DateCharacteristic, entered: string): ParsedValue {
  const read = parseDateEntry(entered);
  if (read.ok) return { ok: true, value: { kind: "date", date: read.date, entered } };
  return problemWith(characteristic, entered, {
    code: "NOT_A_DATE",
    is: "is not a date",
    expected: read.expected,
  });
}

function parsePresent(characteristic: Characteristic, text: string, options: ParseValueOptions): ParsedValue {
  switch (characteristic.kind) {
    case "quantity":
      return parseQuantityValue(characteristic, text, options);
    case "choice":
      return parseChoice(characteristic, text);
    case "designation":
      return parseDesignationValue(characteristic, text);
    case "text":
      return parseText(characteristic, text);
    case "date":
      return parseDate(characteristic, text);
  }
}

/** A choice that is itself called "none" is that choice. */
function isChoice(characteristic: Characteristic, text: string): boolean {
  return characteristic.kind === "choice" && choiceOf(characteristic, text) !== undefined;
}

/**
 * Reads an entry as a value of a characteristic, keeping what was entered to the letter; only a unit that the entry
 * lacks and the heading names is added to it. "Not fitted" and the like, and a dash, are a value where the
 * characteristic is removable.
 *
 * Refuses an empty entry (nothing entered is no value, not a missing part), notation that cannot be read, values
 * outside the believable range, spellings that name no choice, and absence where a car always has the thing.
 */
export function parseValue(
  characteristic: Characteristic,
  entered: string,
  options: ParseValueOptions = {},
): ParsedValue {
  const text = entered.trim();
  if (text === "") {
    return problemWith(characteristic, entered, { code: "EMPTY", is: "is empty", expected: "an entry" });
  }
  if (!saysAbsent(text) || isChoice(characteristic, text)) return parsePresent(characteristic, text, options);
  if (characteristic.removable) return { ok: true, value: { kind: "absent", entered: text } };
  const is = "says it is not there";
  const expected = "a value, since a car always has this; leave it empty where it is not known";
  return problemWith(characteristic, text, { code: "NOT_REMOVABLE", is, expected });
}

/**
 * Reads a limit of a specification, in SI, in the notation and the believable range of the characteristic's values.
 * Refuses limits of anything but a quantity.
 */
export function parseLimit(
  characteristic: Characteristic,
  entered: string,
  options: ParseValueOptions = {},
): ParsedLimit {
  const text = entered.trim();
  if (characteristic.kind !== "quantity") {
    const expected = `no limit, since this is a ${characteristic.kind} and not a quantity`;
    return problemWith(characteristic, entered, { code: "NOTATION", is: "is no limit", expected });
  }
  if (text === "") {
    return problemWith(characteristic, entered, {
      code: "EMPTY",
      is: "is empty",
      expected: "a limit with its unit",
    });
  }
  const parsed = parseQuantityValue(characteristic, text, options);
  if (!parsed.ok) return parsed;
  if (parsed.value.kind !== "quantity") throw new RangeError(`${characteristic.key} did not give a quantity`);
  return { ok: true, si: parsed.value.si };
}
