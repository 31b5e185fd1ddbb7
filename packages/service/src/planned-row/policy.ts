import {
  type CellDoubt,
  type CellProblem,
  chassisKey,
  explainNumber,
  foldHeading,
  type NumberPattern,
  type plainHeadings,
  type RegisterRow,
  sayMisfit,
} from "@trunnion/register";

/** A row that can be taken, with what the register's series say of its number. */
export interface PlannedRow {
  readonly line: number;
  readonly key: string;
  readonly claim: number;
  readonly series: { readonly id: string; readonly slug: string } | null;
  readonly serial: number | null;
  /** Options by the codes of the series, which a file may write in small letters. */
  readonly options: readonly string[];
  readonly row: RegisterRow;
}

/** What the club's series say of numbers and options. */
export interface SeriesFacts {
  readonly id: string;
  readonly slug: string;
  readonly name: string;
  readonly pattern: NumberPattern;
  /** Codes of the options it was offered with. */
  readonly options: readonly string[];
  /** First and last day of its build, ISO. */
  readonly builtFrom: string;
  readonly builtTo: string;
}

/** Letter and heading of the column that holds something, for saying where a problem is. */
export type ColumnName = (column: keyof typeof plainHeadings) => string;

interface SeriesChoice {
  readonly series: SeriesFacts | null;
  readonly serial: number | null;
  readonly doubt?: string;
}

function chooseSeries(
  row: RegisterRow,
  all: readonly SeriesFacts[],
  place: ColumnName,
): SeriesChoice | CellProblem {
  const fits = all.map((series) => ({ series, explained: explainNumber(row.chassis, series.pattern) }));
  if (row.series === undefined) {
    const fit = fits.find(({ explained }) => explained.ok);
    if (fit?.explained.ok) return { series: fit.series, serial: fit.explained.serial };
    const patterns = all.map(({ pattern }) => pattern);
    const misfit = sayMisfit(row.chassis, patterns);
    const doubt = misfit.startsWith(row.chassis) ? `chassis ${misfit}` : `chassis ${row.chassis}: ${misfit}`;
    return { series: null, serial: null, doubt };
  }
  const named = foldHeading(row.series);
  const chosen = fits.find(
    ({ series }) => foldHeading(series.slug) === named || foldHeading(series.name) === named,
  );
  if (!chosen) {
    const expected = `one of: ${all.map(({ name }) => name).join(", ")}`;
    return { column: place("series"), found: row.series, expected };
  }
  const { series, explained } = chosen;
  return explained.ok
    ? { series, serial: explained.serial }
    : { series, serial: null, doubt: explained.problem };
}

/** A car that claims a number: of an earlier row of the file, or of the register. */
export interface Claimant {
  readonly claim: number;
  /** Engine numbers it bears or bore, as keys. */
  readonly engines: readonly string[];
  /** Line of the row that speaks of it; missing while none does. */
  readonly line?: number;
}

function repeated(row: RegisterRow, line: number | undefined, place: ColumnName): CellProblem {
  return {
    column: place("chassis"),
    found: `${row.chassis}, which stands on line ${line} already`,
    expected:
      'one row per car; where two cars claim the number, "2" under "Claim" or their two engine numbers',
  };
}

/** Which of the cars that claim a number a row speaks of, where it says so itself or by its engine. */
function namedClaim(row: RegisterRow, claimants: readonly Claimant[]): number | undefined {
  const engine = row.engine === undefined ? undefined : chassisKey(row.engine);
  const byEngine = claimants.find(({ engines }) => engine !== undefined && engines.includes(engine));
  return row.claim ?? byEngine?.claim;
}

/**
 * Which car a row speaks of. A number that two cars claim is told apart by "Claim", or by the engine: one the register
 * knows wins over the order of the rows, or a file sorted anew would swap the two cars.
 */
function claimOf(row: RegisterRow, claimants: readonly Claimant[], place: ColumnName): number | CellProblem {
  const named = namedClaim(row, claimants);
  if (named !== undefined) {
    const line = claimants.find(({ claim }) => claim === named)?.line;
    return line === undefined ? named : repeated(row, line, place);
  }
  const earlier = claimants.filter(({ line }) => line !== undefined);
  const known = claimants.length - earlier.length;
  if (row.engine !== undefined && claimants.length > 1 && known > 0) {
    const engines = claimants.map(
      ({ claim, engines: borne }) => `${claim}: ${borne.join(", ") || "not known"}`,
    );
    return {
      column: place("engine"),
      found: `${row.engine}, which none of the ${claimants.length} cars that claim ${row.chassis} bears`,
      expected: `"1" to "9" under "Claim"; engines by claimant: ${engines.join("; ")}`,
    };
  }
  if (earlier.length === 0) return 1;
  const differs = row.engine !== undefined && earlier.every(({ engines }) => engines.length > 0);
  return differs
    ? Math.max(...claimants.map(({ claim }) => claim)) + 1
    : repeated(row, earlier[0]?.line, place);
}

/** Longest number a car is filed under, in characters: an address names the car by it. */
const CHASSIS_LIMIT = 40;
/** Between two numbers that somebody wrote into one cell. */
const BETWEEN = /\s*(?:[/&+,;\n]|\b(?:and|und|og|och|et|or)\b)\s*/iu;
/** How a line of totals begins, in the languages of spreadsheets met with. */
const TOTALS = /^(?:sub-?|grand )?(?:total|totals|sum|summe|gesamt|anzahl|count)\b[\s:.]*$/i;

/** Numbers of a series, two or more, that stand in one cell. */
function numbersIn(chassis: string, all: readonly SeriesFacts[]): readonly string[] {
  const parts = chassis.split(BETWEEN).filter((part) => part !== "");
  const fits = (part: string) => all.some(({ pattern }) => explainNumber(part, pattern).ok);
  return parts.length > 1 && parts.every(fits) ? parts : [];
}

function numberProblem(
  chassis: string,
  all: readonly SeriesFacts[],
  place: ColumnName,
): CellProblem | undefined {
  const column = place("chassis");
  if (chassisKey(chassis) === "") return { column, found: chassis, expected: "letters or figures" };
  if (TOTALS.test(chassis))
    return { column, found: chassis, expected: "a chassis number; a line of totals is no car" };
  const several = numbersIn(chassis, all);
  if (several.length > 0) {
    const expected = `one car in a row; ${several.join(" and ")} need a row each`;
    return { column, found: chassis, expected };
  }
  if (chassis.includes("~"))
    return { column, found: chassis, expected: 'no "~"; a further car of one number has "2" under "Claim"' };
  if (chassis.length <= CHASSIS_LIMIT) return undefined;
  return { column, found: chassis, expected: `at most ${CHASSIS_LIMIT} characters` };
}

/** Codes as the series writes them, and those it was not offered with. */
function optionsOf(row: RegisterRow, series: SeriesFacts | null) {
  const codes = new Map(series?.options.map((code) => [code.toUpperCase(), code]));
  const named = row.options.map((said) => codes.get(said.toUpperCase()) ?? said);
  const strange = series === null ? [] : named.filter((code) => !series.options.includes(code));
  return { options: [...new Set(named)], strange };
}

/** The claimants of a number once a further row speaks of one of them. */
export function withClaimant(
  claimants: readonly Claimant[],
  { claim, line, row }: { readonly claim: number; readonly line: number; readonly row: RegisterRow },
): readonly Claimant[] {
  const before = claimants.find((one) => one.claim === claim)?.engines ?? [];
  const engines = row.engine === undefined ? before : [...before, chassisKey(row.engine)];
  const others = claimants.filter((one) => one.claim !== claim);
  return [...others, { claim, line, engines }].sort((a, b) => a.claim - b.claim);
}

/** What a row is placed by. */
interface Known {
  readonly series: readonly SeriesFacts[];
  readonly claimants: readonly Claimant[];
  readonly place: ColumnName;
}

export type PlacedRow =
  | (Pick<PlannedRow, "claim" | "series" | "serial" | "options"> & {
      readonly ok: true;
      /** What somebody should look at, although the row is taken. */
      readonly doubts: readonly CellDoubt[];
    })
  | { readonly ok: false; readonly problems: readonly CellProblem[] };

/** Says which car of which series a row speaks of, or why that cannot be said. */
export function placeRow(row: RegisterRow, { series: all, claimants, place }: Known): PlacedRow {
  const unfit = numberProblem(row.chassis, all, place);
  if (unfit) return { ok: false, problems: [unfit] };
  const choice = chooseSeries(row, all, place);
  const claim = claimOf(row, claimants, place);
  if ("found" in choice || typeof claim !== "number") {
    const problems = [choice, claim].filter((part) => typeof part === "object" && "found" in part);
    return { ok: false, problems: problems as CellProblem[] };
  }
  const { series, serial, doubt } = choice;
  const { options, strange } = optionsOf(row, series);
  const doubts: readonly CellDoubt[] = [
    ...(doubt === undefined ? [] : [{ column: place("chassis"), found: row.chassis, text: doubt }]),
    ...(strange.length > 0
      ? [
          {
            column: place("options"),
            found: strange.join(" "),
            text: `${series?.name} has no option ${strange.join(", ")}`,
          },
        ]
      : []),
    ...(claim > 1
      ? [
          {
            column: place("chassis"),
            found: row.chassis,
            text: `another car claims ${row.chassis} too: taken as claimant ${claim}`,
          },
        ]
      : []),
  ];
  const kept = series && { id: series.id, slug: series.slug };
  return { ok: true, claim, serial, options, doubts, series: kept };
}
