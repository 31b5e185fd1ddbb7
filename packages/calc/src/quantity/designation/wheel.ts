import { readNumber } from "../number";
import { refuseDesignation, tidyDesignation } from "./refuse";

/** A road wheel's rim. Lengths in metres. */
export interface Wheel {
  readonly kind: "wheel";
  /** Between the bead seats' flanges, m. */
  readonly width: number;
  /** Flange letters, e.g. "J"; `null` when none are stated. */
  readonly flange: string | null;
  /** Nominal diameter at the bead seat, m. */
  readonly rimDiameter: number;
  /** Offset (ET), m: positive when the mounting face lies outboard of the rim's middle; `null` when not stated. */
  readonly offset: number | null;
  /** One text per wheel: "5½J x 14 ET 20". */
  readonly canonical: string;
}

const examples = ["5½J x 14 ET 20", "5.5J x 13"];
const width = "(\\d{1,2}\\.\\d{1,2}|\\d{1,2}[ -](?:1/2|[13]/4)|\\d{0,2} ?[½¼¾]|\\d{1,2})";
const flange = "(?: ?(JJ|JK|JB|[BCDEFJKL]))?";
const offset = "(?: ?ET ?([+-]?\\d{1,3}(?:\\.\\d)?)(?: ?MM)?)?";
const widthFirst = new RegExp(`^${width}${flange}(?: ?[X-] ?| )(\\d{2})${offset}$`);
const diameterFirst = new RegExp(`^(\\d{2}) ?X ?${width}${flange}${offset}$`);

/**
 * Reads a wheel: width, flange letters, diameter, offset; also with the diameter first (13 x 5½J), which is told
 * apart by size: rims are 10 in or more across and, where the diameter comes first, less than 10 in wide.
 *
 * Refuses widths that are no quarter inches or outside 2 to 14 in, diameters outside 10 to 20 in, offsets beyond
 * ±100 mm.
 * @throws NotationError
 * @example parseWheel("5.5J x 13").canonical // => "5½J x 13"
 */
export function parseWheel(entered: string): Wheel {
  const text = tidyDesignation(entered, examples).toUpperCase();
  const parts = readWheel(text);
  if (parts === undefined) return refuseDesignation(entered, "this is no wheel size", examples);
  const wheel = {
    kind: "wheel",
    width: (requireWidth(entered, parts.width) * 254) / 10_000,
    flange: parts.flange ?? null,
    rimDiameter: (requireDiameter(entered, Number(parts.diameter)) * 254) / 10_000,
    offset: parts.offset === undefined ? null : requireOffset(entered, Number(parts.offset)) / 1000,
  } as const;
  return { ...wheel, canonical: printWheel(wheel) };
}

interface WheelText {
  readonly width: string;
  readonly flange: string | undefined;
  readonly diameter: string;
  readonly offset: string | undefined;
}

function readWheel(text: string): WheelText | undefined {
  const reversed = diameterFirst.exec(text);
  if (reversed !== null && Number(reversed[1]) >= 10 && widthOf(reversed[2] ?? "") < 10) {
    const [, diameter = "", size = "", letters, et] = reversed;
    return { width: size, flange: letters, diameter, offset: et };
  }
  const found = widthFirst.exec(text);
  if (found === null) return undefined;
  const [, size = "", letters, diameter = "", et] = found;
  return { width: size, flange: letters, diameter, offset: et };
}

function widthOf(text: string): number {
  return readNumber({ text, at: 0 }).value;
}

function requireWidth(entered: string, text: string): number {
  const inches = widthOf(text);
  if (inches >= 2 && inches <= 14 && Number.isInteger(inches * 4)) return inches;
  return refuseDesignation(entered, `a rim ${text} in wide is not made: 2 to 14 in quarters`, examples);
}

function requireDiameter(entered: string, inches: number): number {
  if (inches >= 10 && inches <= 20) return inches;
  return refuseDesignation(entered, `a rim of ${inches} in is not made for cars: 10 to 20`, examples);
}

function requireOffset(entered: string, mm: number): number {
  if (Math.abs(mm) <= 100) return mm;
  return refuseDesignation(entered, `an offset of ${mm} mm is beyond 100 mm either way`, examples);
}

const quarters = ["", "¼", "½", "¾"];

/** The one text of a wheel; reading it gives the wheel back. */
export function printWheel({
  width: metres,
  flange: letters,
  rimDiameter,
  offset: et,
}: Omit<Wheel, "canonical">): string {
  const count = Math.round((metres / 0.0254) * 4);
  const size = `${Math.floor(count / 4)}${quarters[count % 4] ?? ""}${letters ?? ""}`;
  const shift = et === null ? "" : ` ET ${Number((et * 1000).toFixed(1))}`;
  return `${size} x ${Math.round(rimDiameter / 0.0254)}${shift}`;
}
