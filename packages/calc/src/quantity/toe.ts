import { angleFromRim } from "../alignment/rim";
import { NotationError, type NotationErrorCode } from "./notation-error";
import { parseQuantity, type Quantity } from "./parse";
import { tidy } from "./tidy";

/** Toe as read: total and per wheel, whatever was entered. Toe-in is positive. */
export interface Toe {
  /** Toe-in of one wheel, rad; the total is shared evenly. */
  readonly perWheel: number;
  /** Toe-in of both wheels together, rad. */
  readonly total: number;
  /** The step the entry implies for one wheel, rad. */
  readonly resolution: number;
  readonly measure: "angle" | "rimDistance";
  readonly share: ToeShare;
  /** Diameter over which a rim distance was measured, m; `null` for an angle. */
  readonly rimDiameter: number | null;
  /** Unit of the figure as written. */
  readonly unit: string;
  readonly entered: string;
}

/** Whether a figure holds for each wheel, or for both together. */
export type ToeShare = "perSide" | "total";

export interface ToeOptions {
  /** Diameter (m) over which a rim distance is measured, where the entry does not say (`… on 13 in rim`). */
  readonly rimDiameter?: number;
  /** What a figure without "per side" or "total" means; left out, such an entry is refused. */
  readonly share?: ToeShare;
  /** What a figure without "in", "out" or a sign means; left out, such an entry is refused. */
  readonly direction?: "in" | "out";
}

const examples = [`1/16" toe-out per side`, "0°20' toe-in total", "2 mm toe-in total on 13 in rim"];
const shareWords =
  /(?:^|[\s,]+)(?:(per side|per wheel|each side|each wheel|each)|(in total|total|overall|in all))(?=$|[\s,])/i;
const rimWords = /(?:^|[\s,]+)(?:on|at|over)(?: an?)? (\S.*?)(?: rims?| wheels?)(?=$|[\s,])/i;
const toeWords = /(?:^|[\s,]+)toe(?:-| )?(in|out)(?=$|[\s,])/i;
const lastWord = /[\s,]+(in|out)$/i;

/**
 * Reads toe: an angle or a distance at the rim, in or out (or a sign, + for in), per side or total, in any order:
 * `1/16" toe-out per side`, `0°20' toe-in total`, `-10' per wheel`, `2 mm in, total, on 13 in rim`. Nought needs no
 * direction. "In total" alone is the share, not the direction.
 *
 * A distance is the difference between the rear and the front of the rim, so it becomes an angle only with the
 * diameter it is measured over: asin(d/D) per wheel.
 * @throws NotationError that says which of direction, share or rim is missing
 */
export function parseToe(entered: string, options: ToeOptions = {}): Toe {
  try {
    return { ...readToe(tidy(entered, examples).trim(), options), entered };
  } catch (error) {
    throw error instanceof NotationError ? error.about(entered, examples) : error;
  }
}

function readToe(text: string, options: ToeOptions): Omit<Toe, "entered"> {
  const toe = take(text, toeWords);
  const share = take(toe.rest, shareWords);
  const rim = take(share.rest, rimWords);
  const stated =
    share.words[0] !== undefined ? "perSide" : share.words[1] !== undefined ? "total" : undefined;
  const { figure, direction } = readFigure(rim.rest, toe.words[0]);
  const rimDiameter =
    rim.words[0] === undefined ? options.rimDiameter : parseQuantity(rim.words[0], "length").si;
  const size = signedFigure(text, figure, direction ?? options.direction);
  const part =
    stated ??
    options.share ??
    refuse(text, "SHARE_NEEDED", "per side or total?", [`${text} per side`, `${text} total`]);
  const wheels = part === "total" ? 2 : 1;
  const perWheel = toAngle(text, size / wheels, { figure, rimDiameter });
  return {
    perWheel,
    total: 2 * perWheel,
    resolution: toAngle(text, figure.resolution / wheels, { figure, rimDiameter }),
    measure: figure.dimension === "angle" ? "angle" : "rimDistance",
    share: part,
    rimDiameter: figure.dimension === "angle" ? null : (rimDiameter ?? null),
    unit: figure.unit,
  };
}

/** Takes a phrase out of a text, wherever it stands. */
function take(
  text: string,
  phrase: RegExp,
): { readonly rest: string; readonly words: readonly (string | undefined)[] } {
  const match = phrase.exec(text);
  if (match === null) return { rest: text, words: [] };
  const rest = `${text.slice(0, match.index)} ${text.slice(match.index + match[0].length)}`;
  return { rest: rest.replace(/^[\s,]+|[\s,]+$/g, ""), words: match.slice(1) };
}

/** "2 mm in" is toe-in, but "1/16 in" is inches: a last "in" is a direction only where the rest stands without it. */
function readFigure(
  text: string,
  stated: string | undefined,
): { figure: Quantity; direction: string | undefined } {
  const last = stated === undefined ? lastWord.exec(text) : null;
  const figure = last === null ? undefined : measureOf(text.slice(0, last.index));
  if (figure !== undefined) return { figure, direction: last?.[1] };
  const whole = measureOf(text);
  if (whole !== undefined) return { figure: whole, direction: stated };
  return refuse(text, "WRONG_KIND", "toe is an angle or a distance at the rim");
}

/** A distance if it reads as one, feet aside: 10' is minutes here, and 1/16" is inches. */
function measureOf(text: string): Quantity | undefined {
  const distance = attempt(() => parseQuantity(text, "length"));
  if (distance !== undefined && !distance.unit.startsWith("ft")) return distance;
  return attempt(() => parseQuantity(text, "angle"));
}

function attempt(read: () => Quantity): Quantity | undefined {
  try {
    return read();
  } catch (error) {
    if (error instanceof NotationError) return undefined;
    throw error;
  }
}

function signedFigure(text: string, figure: Quantity, direction: string | undefined): number {
  const signed =
    /^\s*(?:[+-]|(?:neg|pos|minus|plus))/i.test(figure.entered) || /(?:neg|pos)\w*\.?$/i.test(figure.entered);
  if (figure.si === 0) return 0;
  if (signed && direction !== undefined && /\b(?:in|out)\b/i.test(text.replace(figure.entered, ""))) {
    return refuse(text, "TWO_SIGNS", "a sign and a direction say the same thing twice");
  }
  if (signed) return figure.si;
  if (direction === undefined)
    return refuse(text, "DIRECTION_NEEDED", "toe-in or toe-out?", [`toe-in ${text}`, `toe-out ${text}`]);
  return direction.toLowerCase() === "out" ? -figure.si : figure.si;
}

interface Rim {
  readonly figure: Quantity;
  readonly rimDiameter: number | undefined;
}

function toAngle(text: string, size: number, { figure, rimDiameter }: Rim): number {
  if (figure.dimension === "angle") return size;
  if (rimDiameter === undefined) {
    const problem =
      "a distance becomes an angle only with the diameter of the rim it is measured at: add the rim, or write the angle";
    const understood = [`${text} on 13 in rim`, "0°20' toe-in total"];
    throw new NotationError({ entered: text, code: "RIM_NEEDED", place: text.length, problem, understood });
  }
  if (Math.abs(size) < rimDiameter) return angleFromRim(size, rimDiameter);
  return refuse(text, "OUT_OF_RANGE", "the distance is greater than the rim");
}

function refuse(text: string, code: NotationErrorCode, problem: string, understood = examples): never {
  throw new NotationError({ entered: text, code, place: text.length, problem, understood });
}
