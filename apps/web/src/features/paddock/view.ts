import type { EventPack } from "@trunnion/api";
import {
  bestOutcome,
  type CheckStanding,
  checkStandings,
  type DecisionOutcome,
  type DecisionStanding,
  decisionStanding,
  type Tally,
  tallyOf,
} from "@trunnion/register";
import type { DecidedEntry, EntryFinding, KeptEvent } from "./kept";

type PackEntry = EventPack["entries"][number];

/** One entry as it stands by what the server had and what this device found since. */
export interface EntryView {
  readonly entry: PackEntry;
  readonly standings: ReadonlyMap<string, CheckStanding>;
  readonly tally: Tally;
  /** The outcome the findings allow; nothing while something is open or in conflict. */
  readonly best?: DecisionOutcome;
  readonly decision: DecisionStanding;
  /** Records of this entry that the server does not have. */
  readonly unsent: number;
}

/** Both lists without doubles: what the server says of a record counts. */
function merged<T extends { readonly key: string }>(theirs: readonly T[], ours: readonly T[]): readonly T[] {
  const known = new Set(theirs.map(({ key }) => key));
  return [...theirs, ...ours.filter(({ key }) => !known.has(key))];
}

function byEntry<T extends { readonly entryId: string }>(records: readonly T[]): ReadonlyMap<string, T[]> {
  const grouped = new Map<string, T[]>();
  for (const record of records) {
    const here = grouped.get(record.entryId);
    if (here) here.push(record);
    else grouped.set(record.entryId, [record]);
  }
  return grouped;
}

/** Every check of a sheet, in walking order. */
export const checksOf = ({ sheet }: PackEntry) => sheet.stations.flatMap(({ checks }) => checks);

/** Every entry as it stands, in running order. */
export function viewsOf({ pack, records }: KeptEvent): readonly EntryView[] {
  if (!pack) return [];
  const ourFindings: EntryFinding[] = [];
  const ourDecisions: DecidedEntry[] = [];
  for (const kept of records) {
    if (kept.kind === "finding") ourFindings.push(kept.record);
    else ourDecisions.push(kept.record);
  }
  const findings = byEntry(merged(pack.findings, ourFindings));
  const decisions = byEntry(merged(pack.decisions, ourDecisions));
  return pack.entries.map((entry) => {
    const codes = checksOf(entry).map(({ id }) => id);
    const standings = checkStandings(codes, findings.get(entry.entryId) ?? []);
    const tally = tallyOf(standings.values());
    const best = bestOutcome(tally);
    return {
      entry,
      standings,
      tally,
      ...(best === undefined ? {} : { best }),
      decision: decisionStanding(decisions.get(entry.entryId) ?? []),
      unsent: records.filter(({ sent, record }) => !sent && record.entryId === entry.entryId).length,
    };
  });
}

/** Whether the car was refused as it stands: when it comes again, only what was not passed is looked at. */
export function wasRefused({ decision }: EntryView): boolean {
  return decision.state !== "none" && decision.decisions.some(({ outcome }) => outcome === "refused");
}

/** Stations with what is open, in conflict, advised or refused; what was passed is left out. */
export function openStations({ entry, standings }: EntryView): PackEntry["sheet"]["stations"] {
  const isOpen = (id: string) => {
    const one = standings.get(id);
    return one?.state !== "found" || one.result === "refuse" || one.result === "advise";
  };
  return entry.sheet.stations
    .map((station) => ({ ...station, checks: station.checks.filter(({ id }) => isOpen(id)) }))
    .filter(({ checks }) => checks.length > 0);
}

const counted = (count: number, word: string) => (count === 0 ? [] : [`${count} ${word}`]);

/** "31 passed, 2 advised, 9 open". */
export function sayTally(tally: Tally): string {
  const parts = [
    ...counted(tally.refused, "refused"),
    ...counted(tally.conflicts, "in conflict"),
    ...counted(tally.advised, "advised"),
    ...counted(tally.passed, "passed"),
    ...counted(tally.notApplicable, "not applicable"),
    ...counted(tally.open, "open"),
  ];
  return parts.length === 0 ? "no checks" : parts.join(", ");
}

const plainWord = (text: string) =>
  text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/\s+/g, " ").trim();

/** The entries a few typed letters mean: a running number to the letter, else a part of chassis, driver, series or class. */
export function found(views: readonly EntryView[], typed: string): readonly EntryView[] {
  const wanted = plainWord(typed);
  if (wanted === "") return views;
  const exact = views.filter(({ entry }) => plainWord(entry.sheet.entry.runningNumber) === wanted);
  if (exact.length > 0) return exact;
  return views.filter(({ entry: { sheet } }) =>
    plainWord(
      [
        sheet.entry.runningNumber,
        sheet.car.chassis,
        sheet.entry.driver,
        sheet.car.series,
        sheet.entry.className,
      ].join(" "),
    ).includes(wanted),
  );
}
