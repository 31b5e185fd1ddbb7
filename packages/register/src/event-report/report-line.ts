import { type EventReportModel, pointWords, type ReportEntry } from "./report-model";

/** Headings of the report as a table: one line for each result, point and figure. */
export const reportHeadings = [
  "Number",
  "Chassis",
  "Car",
  "Driver",
  "Group",
  "Class",
  "Kind",
  "What",
  "Result",
  "Reading",
  "Limits",
  "Verdict",
  "Instrument",
  "Note",
  "By",
  "Signed by",
] as const;

type Line = readonly string[];

function entryLines(entry: ReportEntry): readonly Line[] {
  const { number, chassis, car, driver, group, className, outcome, decided, decisionNote, signedBy } = entry;
  const who = [number, chassis, car, driver, group, className];
  const line = (parts: Partial<Record<(typeof reportHeadings)[number], string>>): Line => [
    ...who,
    ...reportHeadings.slice(who.length).map((heading) => parts[heading] ?? ""),
  ];
  return [
    line({
      Kind: "Decision",
      What: "Scrutineering",
      Result: outcome,
      Note: decisionNote,
      By: decided,
      "Signed by": signedBy,
    }),
    ...entry.points.map(({ kind, check, note, by }) =>
      line({ Kind: "Check", What: check, Result: pointWords[kind], Note: note, By: by }),
    ),
    ...entry.figures.map(({ label, entered, limits, verdict, instrument }) =>
      line({
        Kind: "Figure",
        What: label,
        Reading: entered,
        Limits: limits,
        Verdict: verdict,
        Instrument: instrument,
      }),
    ),
  ];
}

/** The report as lines of a table below `reportHeadings`: every car's decision, then what was not passed, then figures. */
export function reportLines({ entries }: Pick<EventReportModel, "entries">): readonly Line[] {
  return entries.flatMap(entryLines);
}
