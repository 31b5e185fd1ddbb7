import { explainNumber, serialGaps, serialText } from "../identity/number";
import type { NumberedCar, NumberedSeries } from "./finding";

/** How much of a series the register knows. */
export interface SeriesCoverage {
  readonly slug: string;
  readonly name: string;
  /** Serials known, each once. */
  readonly known: number;
  /** Cars whose number does not fit, and which therefore are in no run. */
  readonly unplaced: number;
  /** How many were built: as the series says, else as many as there are serials. */
  readonly built: number;
  /** Runs of serials that nobody knows, as the series writes them. */
  readonly gaps: readonly { readonly from: string; readonly to: string; readonly count: number }[];
}

/** What the register knows of each series' run, and what it does not. */
export function coverageOf(
  series: NumberedSeries & { readonly builtCount?: number },
  cars: readonly NumberedCar[],
): SeriesCoverage {
  const { pattern, slug, builtCount } = series;
  const readings = cars
    .filter((car) => car.series === slug)
    .map(({ chassis }) => explainNumber(chassis, pattern));
  const serials = new Set(readings.flatMap((reading) => (reading.ok ? [reading.serial] : [])));
  return {
    slug,
    name: pattern.series,
    known: serials.size,
    unplaced: readings.filter(({ ok }) => !ok).length,
    built: builtCount ?? pattern.last - pattern.first + 1,
    gaps: serialGaps(serials, pattern).map(({ from, to }) => ({
      from: serialText(pattern, from),
      to: serialText(pattern, to),
      count: to - from + 1,
    })),
  };
}
