import { checkStandings, type Finding } from "@trunnion/register";
import { dayOf } from "../day";
import type { StoredFinding, StoredReading } from "./read";

/** One reading as it goes on the car's sheet. */
export interface SheetReading extends StoredReading {
  /** 1, or 2 and up where several scrutineers measured the same place. */
  readonly repeat: number;
}

/** What an entry's findings say of the car: the readings that stand, and the day they were taken. */
export interface EntryReadings {
  /** ISO day of the latest of them; empty where there are none. */
  readonly on: string;
  readonly readings: readonly SheetReading[];
}

const findingOf = ({ clientKey, replaces, checkCode, result, foundAt }: StoredFinding): Finding => ({
  key: clientKey,
  replaces,
  check: checkCode,
  result,
  note: "",
  readings: [],
  by: "",
  at: foundAt.toISOString(),
});

const placeOf = ({ characteristic, side }: StoredReading) => `${characteristic} ${side}`;

/**
 * The readings of an entry that stand, oldest first: of findings whose place another took nothing counts, of scrutineers
 * who differ both count, as repeats of one place. The same figure at two checks is one reading.
 */
export function standingReadings(findings: readonly StoredFinding[]): EntryReadings {
  const standings = checkStandings([], findings.map(findingOf));
  const standing = new Set(
    [...standings.values()].flatMap((one) =>
      one.state === "open" ? [] : one.findings.map((finding) => finding.key),
    ),
  );
  const counted = findings
    .filter((finding) => standing.has(finding.clientKey) && finding.readings.length > 0)
    .sort((a, b) => a.foundAt.getTime() - b.foundAt.getTime() || a.clientKey.localeCompare(b.clientKey));
  const byPlace = new Map<string, SheetReading[]>();
  for (const reading of counted.flatMap(({ readings }) => readings)) {
    const here = byPlace.get(placeOf(reading)) ?? [];
    if (!here.some(({ entered }) => entered === reading.entered))
      here.push({ ...reading, repeat: here.length + 1 });
    byPlace.set(placeOf(reading), here);
  }
  const latest = counted.at(-1)?.foundAt;
  return { on: latest ? dayOf(latest) : "", readings: [...byPlace.values()].flat() };
}

/** One line for each reading, by which two sheets are told to say the same. */
export function saidOf({ on, readings }: EntryReadings): string {
  const lines = readings.map(({ repeat, entered, instrumentId, ...place }) =>
    [placeOf({ ...place, entered, instrumentId }), repeat, entered, instrumentId ?? ""].join(" "),
  );
  return [on, ...lines.sort()].join("\n");
}
