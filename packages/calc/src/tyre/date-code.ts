import { CalcRefusal } from "../catalogue/refusal";

/** When a tyre was made. */
export interface TyreDate {
  /** Week of the year, 1 to 53. */
  readonly week: number;
  /** Full year; `null` for a three-figure code, whose decade is not on the tyre. */
  readonly year: number | null;
  /** Last figure of the year, known from either code. */
  readonly yearDigit: number;
}

/**
 * Reads the date figures behind DOT on a tyre: four since 2000 (week, year), three before (week, last figure of the
 * year), whose decade nobody can tell from the code alone and which is therefore not guessed.
 *
 * @throws CalcRefusal for anything but three or four figures, and for a week outside 1 to 53
 * @example tyreDate("0617") // => { week: 6, year: 2017, yearDigit: 7 }
 */
export function tyreDate(code: string): TyreDate {
  const figures = code.trim();
  if (!/^\d{3,4}$/.test(figures))
    throw new CalcRefusal(
      "NO_DATE_CODE",
      `"${code.slice(0, 40)}" is no date code; understood would be 0617 or 027`,
      "code",
    );
  const week = Number(figures.slice(0, 2));
  if (week < 1 || week > 53)
    throw new CalcRefusal(
      "NO_SUCH_WEEK",
      `"${figures}": there is no week ${week}; 01 to 53 are weeks`,
      "code",
    );
  const year = figures.length === 4 ? 2000 + Number(figures.slice(2)) : null;
  return { week, year, yearDigit: Number(figures.at(-1)) };
}
