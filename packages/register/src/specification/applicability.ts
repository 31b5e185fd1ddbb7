import type { Applicability } from "./specification";

/** What a series says of its cars, as far as a specification can contradict it. */
export interface SeriesFacts {
  /** Name of the series, for the words. */
  readonly name: string;
  /** Option codes the works offered. */
  readonly options: readonly string[];
  /** First and last serial, inclusive. */
  readonly firstSerial: number;
  readonly lastSerial: number;
  /** First and last day of build, ISO. */
  readonly builtFrom: string;
  readonly builtTo: string;
}

/** Which cars an entry speaks of, in words: "numbers 120 to 398, option SPORT", "every car". */
export function sayApplicability(applicability: Applicability): string {
  const { serialFrom, serialTo, builtFrom, builtTo, option } = applicability;
  const span = (from: number | string | undefined, to: number | string | undefined) =>
    from === undefined ? `up to ${to}` : to === undefined ? `from ${from}` : `${from} to ${to}`;
  const parts = [
    serialFrom === undefined && serialTo === undefined ? undefined : `numbers ${span(serialFrom, serialTo)}`,
    builtFrom === undefined && builtTo === undefined ? undefined : `built ${span(builtFrom, builtTo)}`,
    option === undefined ? undefined : `option ${option}`,
  ].filter((part) => part !== undefined);
  return parts.length === 0 ? "every car" : parts.join(", ");
}

/** Why an entry speaks of no car. */
export interface ApplicabilityProblem {
  readonly code: "NEVER_APPLIES" | "UNKNOWN_OPTION";
  readonly what: string;
  /** Part of the entry it lies in. */
  readonly field: "serialFrom" | "serialTo" | "builtFrom" | "builtTo" | "option";
}

/** A span that ends before it begins. */
function backwards({
  serialFrom,
  serialTo,
  builtFrom,
  builtTo,
}: Applicability): ApplicabilityProblem | undefined {
  const code = "NEVER_APPLIES";
  if (serialFrom !== undefined && serialTo !== undefined && serialFrom > serialTo) {
    return { code, what: `from number ${serialFrom} to ${serialTo} there is none`, field: "serialTo" };
  }
  if (builtFrom !== undefined && builtTo !== undefined && builtFrom > builtTo) {
    return { code, what: `from ${builtFrom} to ${builtTo} there is no day`, field: "builtTo" };
  }
  return undefined;
}

/** A span of numbers or days in which the series has no car. */
function beyond(applicability: Applicability, series: SeriesFacts): ApplicabilityProblem | undefined {
  const { serialFrom, serialTo, builtFrom, builtTo } = applicability;
  const { name, firstSerial, lastSerial } = series;
  const code = "NEVER_APPLIES";
  const has = `${name} has numbers ${firstSerial} to ${lastSerial}`;
  if (serialFrom !== undefined && serialFrom > lastSerial) {
    return { code, what: `${has}, none from ${serialFrom}`, field: "serialFrom" };
  }
  if (serialTo !== undefined && serialTo < firstSerial) {
    return { code, what: `${has}, none up to ${serialTo}`, field: "serialTo" };
  }
  const was = `${name} was built ${series.builtFrom} to ${series.builtTo}`;
  if (builtFrom !== undefined && builtFrom > series.builtTo) {
    return { code, what: `${was}, none from ${builtFrom}`, field: "builtFrom" };
  }
  if (builtTo !== undefined && builtTo < series.builtFrom) {
    return { code, what: `${was}, none up to ${builtTo}`, field: "builtTo" };
  }
  return undefined;
}

function unknownOption(
  { option }: Applicability,
  { name, options }: SeriesFacts,
): ApplicabilityProblem | undefined {
  if (option === undefined || options.includes(option)) return undefined;
  const known = options.length === 0 ? "it has none" : `it has ${options.join(", ")}`;
  return { code: "UNKNOWN_OPTION", what: `${name} has no option "${option}"; ${known}`, field: "option" };
}

/** Why no car can fall under an applicability, if that is so; without the series only what it says itself. */
export function applicabilityProblem(
  applicability: Applicability,
  series?: SeriesFacts,
): ApplicabilityProblem | undefined {
  const own = backwards(applicability);
  if (own !== undefined || series === undefined) return own;
  return beyond(applicability, series) ?? unknownOption(applicability, series);
}
