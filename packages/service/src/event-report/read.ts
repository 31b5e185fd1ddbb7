import { createHash } from "node:crypto";
import {
  type CharacteristicBook,
  type CheckStanding,
  checkStandings,
  type DecisionStanding,
  decisionOutcomeWords,
  decisionStanding,
  EVENT_REPORT_LAYOUT,
  type EventReportModel,
  type Finding,
  judgeReading,
  type PointKind,
  type ReportEntry,
  type ReportFigure,
  type ReportPoint,
  reportHeadings,
  reportLines,
  type SheetCheck,
  sayDay,
  sayLimits,
  tallyOf,
} from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { type EventEntry, entriesOf, findEvent } from "../event";
import { csvLine } from "../export/policy";
import { type EventRecords, inspectionOf } from "../inspection";
import { inspectors } from "../inspection/policy";
import { type DeviceLine, devicesOf } from "../inspection-device";
import { type MadeSheet, makeSheets } from "../printed-sheet";
import { requireRole } from "../role";

const order: readonly PointKind[] = ["refused", "differ", "advised", "open"];

/** "26 Sep 2026 09:14 UTC". */
const sayInstant = (iso: string) => `${sayDay(iso.slice(0, 10))} ${iso.slice(11, 16)} UTC`;

const cautions = [
  "The organiser's current regulations and the scrutineer decide. This report certifies no roadworthiness.",
  "A check that was not looked at is not passed.",
] as const;

interface Reporting {
  readonly ctx: Context;
  readonly book: CharacteristicBook;
  readonly records: EventRecords;
  readonly instruments: ReadonlyMap<
    string,
    { readonly label: string; readonly expandedUncertainty: number | null }
  >;
}

function pointOf(check: SheetCheck, standing: CheckStanding): ReportPoint | undefined {
  const text = check.text;
  if (standing.state === "open") return { kind: "open", check: text, note: "", by: "" };
  const by = [...new Set(standing.findings.map((one) => one.by))].filter((name) => name !== "").join(", ");
  const notes = [...new Set(standing.findings.map(({ note }) => note))].filter((note) => note !== "");
  const note = notes.join("; ");
  if (standing.state === "conflict") return { kind: "differ", check: text, note, by };
  if (standing.result === "refuse") return { kind: "refused", check: text, note, by };
  return standing.result === "advise" ? { kind: "advised", check: text, note, by } : undefined;
}

function figuresOf(
  { ctx, book, instruments }: Reporting,
  { assessment }: MadeSheet,
  standings: Iterable<CheckStanding>,
): readonly ReportFigure[] {
  const findings: Finding[] = [...standings].flatMap((one) => (one.state === "open" ? [] : one.findings));
  const figures = findings.flatMap(({ readings }) =>
    readings.flatMap(({ characteristic: key, side, entered, instrument }): ReportFigure[] => {
      const characteristic = book.find(key);
      if (!characteristic) return [];
      const limits = assessment?.deviations.find(
        (one) => one.characteristic === key && one.side === side,
      )?.limits;
      const gauge = instruments.get(instrument ?? "");
      const told = judgeReading(characteristic, entered, limits, gauge?.expandedUncertainty ?? undefined);
      return [
        {
          label: side === "whole" ? characteristic.label : `${characteristic.label}, ${side}`,
          entered,
          limits: limits ? sayLimits(characteristic, limits, ctx.club.unitSystem) : "",
          verdict: limits ? told.text : "",
          instrument: gauge?.label ?? "",
        },
      ];
    }),
  );
  const key = (figure: ReportFigure) => JSON.stringify(figure);
  return [...new Map(figures.map((figure) => [key(figure), figure])).values()];
}

function decisionText(standing: DecisionStanding) {
  if (standing.state === "none")
    return { outcome: "not decided", decided: "", decisionNote: "", signedBy: "" };
  const { decisions } = standing;
  const told = (part: (one: (typeof decisions)[number]) => string) =>
    [...new Set(decisions.map(part))].filter((text) => text !== "").join("; ");
  return {
    outcome:
      standing.state === "conflict" ? "decided twice, differently" : decisionOutcomeWords[standing.outcome],
    decided: told(({ by, at, outcome }) =>
      [standing.state === "conflict" ? decisionOutcomeWords[outcome] : "", by, sayInstant(at)]
        .filter((part) => part !== "")
        .join(", "),
    ),
    decisionNote: told(({ note }) => note),
    signedBy: told(({ signedBy }) => signedBy),
  };
}

function entryOf(reporting: Reporting, made: MadeSheet, entry: EventEntry): ReportEntry {
  const { records } = reporting;
  const own = <T extends { readonly entryId: string }>(all: readonly T[]) =>
    all.filter(({ entryId }) => entryId === entry.id);
  const checks = made.sheet.stations.flatMap((station) => station.checks);
  const standings = checkStandings(
    checks.map(({ id }) => id),
    own(records.findings),
  );
  const decisions = own(records.decisions);
  const points = checks.flatMap((check) => {
    const standing = standings.get(check.id);
    return (standing && pointOf(check, standing)) ?? [];
  });
  const { conflicts, ...tally } = tallyOf(standings.values());
  return {
    number: entry.runningNumber,
    chassis: entry.car?.chassis ?? "",
    car: entry.car?.series ?? entry.describedAs,
    driver: entry.driver,
    group: entry.group,
    className: entry.className,
    ...decisionText(decisionStanding(decisions)),
    presented: decisions.filter(({ outcome }) => outcome === "refused").length,
    counts: { ...tally, differ: conflicts },
    points: [...points].sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind)),
    figures: figuresOf(reporting, made, standings.values()),
  };
}

/** What a device may still hold, in words; empty for one that had sent everything and has a right clock. */
export function sayMissing({ by, heardAt, held }: DeviceLine): string {
  if (held === 0) return "";
  const whose = by === "" ? "A phone" : `${by}'s phone`;
  const what = held === 1 ? "1 record or photo" : `${held} records or photos`;
  return `${whose}, last heard of ${sayInstant(heardAt)}, said that it held ${what} not sent. They are not in here.`;
}

function totalsOf(entries: readonly ReportEntry[], withdrawn: number) {
  const outcomes = ["passed", "passed with advice", "refused", "decided twice, differently", "not decided"];
  const counted = outcomes.map((outcome) => ({
    label: `${outcome.charAt(0).toUpperCase()}${outcome.slice(1)}`,
    value: entries.filter((entry) => entry.outcome === outcome).length,
  }));
  const sum = (part: (entry: ReportEntry) => number) =>
    entries.reduce((total, entry) => total + part(entry), 0);
  return [
    { label: "Entries", value: entries.length },
    ...counted.filter(({ value }) => value > 0),
    { label: "Withdrawn", value: withdrawn },
    { label: "Advisories", value: sum(({ counts }) => counts.advised) },
    { label: "Checks refused", value: sum(({ counts }) => counts.refused) },
    { label: "Checks not looked at", value: sum(({ counts }) => counts.open) },
    { label: "Figures measured", value: sum(({ figures }) => figures.length) },
  ].map(({ label, value }) => ({ label, value: String(value) }));
}

async function instrumentsOf(ctx: Context): Promise<Reporting["instruments"]> {
  const rows = await ctx.db.instrument.findMany({
    select: { id: true, label: true, expandedUncertainty: true },
    take: 1_000,
  });
  return new Map(rows.map(({ id, ...facts }) => [id, facts]));
}

/**
 * What became of an event: each car's decision, what was refused, advised, left open or judged differently, the figures
 * measured with their verdicts, and what phones may still hold. Names drivers and scrutineers, so it is for those who
 * inspect.
 *
 * @throws Refusal ROLE_NEEDED, EVENT_NOT_FOUND, EVENT_HAS_NO_ENTRIES
 */
export async function eventReport(ctx: Context, slug: string): Promise<EventReportModel> {
  requireRole(ctx.actor, ...inspectors);
  const event = await findEvent(ctx, slug);
  const book = await bookOf(ctx);
  const made = await makeSheets(ctx, { event: slug, book });
  const entered = new Map((await entriesOf(ctx, event.id)).map((entry) => [entry.id, entry]));
  const reporting: Reporting = {
    ctx,
    book,
    records: await inspectionOf(ctx, event.id),
    instruments: await instrumentsOf(ctx),
  };
  const entries = made.flatMap((one) => {
    const entry = entered.get(one.entryId);
    return entry ? [entryOf(reporting, one, entry)] : [];
  });
  const withdrawn = await ctx.db.entry.count({ where: { eventId: event.id, withdrawnAt: { not: null } } });
  const told = {
    club: ctx.club.name,
    event: { name: event.name, on: sayDay(event.on), venue: event.venue, ruleSet: event.ruleSet },
    totals: totalsOf(entries, withdrawn),
    entries,
    missing: (await devicesOf(ctx, event.id)).map(sayMissing).filter((line) => line !== ""),
    cautions,
  };
  return {
    layoutVersion: EVENT_REPORT_LAYOUT,
    hash: createHash("sha256").update(JSON.stringify(told)).digest("hex"),
    preparedAt: ctx.now.toISOString(),
    ...told,
  };
}

/** The report as CSV (RFC 4180, UTF-8 with its mark, no cell that a spreadsheet takes for a formula). */
export function reportCsv(model: EventReportModel): string {
  return `\ufeff${csvLine(reportHeadings)}${reportLines(model).map(csvLine).join("")}`;
}
