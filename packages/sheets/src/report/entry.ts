import { pointWords, type ReportEntry, type ReportFigure } from "@trunnion/register";
import { block, type Cell, drawRow, type Line, runOn } from "../layout/row";
import { rule, type } from "../layout/style";
import type { ReportContext } from "./report-context";

const numberWidth = 44;

/** "31 passed, 2 advised, 9 not looked at". */
function countsText({ counts }: ReportEntry): string {
  const parts: readonly (readonly [number, string])[] = [
    [counts.refused, "refused"],
    [counts.differ, "judged differently"],
    [counts.advised, "advised"],
    [counts.passed, "passed"],
    [counts.notApplicable, "not applicable"],
    [counts.open, "not looked at"],
  ];
  return parts.flatMap(([count, word]) => (count === 0 ? [] : [`${count} ${word}`])).join(", ");
}

/** Nothing was found at all: naming what was not looked at would name everything. */
const isUntouched = ({ counts: { passed, advised, refused, differ, notApplicable } }: ReportEntry) =>
  passed + advised + refused + differ + notApplicable === 0;

/** Points of one kind are named one by one; those not looked at, which may be all of them, are counted. */
function pointLines({ faces }: ReportContext, entry: ReportEntry, width: number): readonly Line[] {
  const told = entry.points.filter(({ kind }) => kind !== "open");
  const open = entry.points.filter(({ kind }) => kind === "open");
  const lines = told.flatMap(({ kind, check, note, by }) =>
    runOn(
      [
        { face: faces.bold, size: type.body, text: `${pointWords[kind]}: ` },
        { face: faces.regular, size: type.body, text: check },
        { face: faces.bold, size: type.body, text: note === "" ? "" : ` “${note}”` },
        { face: faces.regular, size: type.small, text: by === "" ? "" : ` ${by}` },
      ],
      width,
    ),
  );
  if (open.length === 0) return lines;
  const named = open.slice(0, 6).map(({ check }) => check);
  const rest = open.length > named.length ? ` and ${open.length - named.length} more` : "";
  return [
    ...lines,
    ...runOn(
      [
        { face: faces.bold, size: type.small, text: `${pointWords.open}, ${open.length}: ` },
        { face: faces.regular, size: type.small, text: `${named.join(" / ")}${rest}` },
      ],
      width,
    ),
  ];
}

function figureText({ label, entered, limits, verdict, instrument }: ReportFigure): string {
  const judged = [limits === "" ? "" : `limits ${limits}`, verdict].filter((part) => part !== "").join(": ");
  const beside = [judged, instrument].filter((part) => part !== "").join("; ");
  return `${label} ${entered}${beside === "" ? "" : ` (${beside})`}`;
}

function figureLines({ faces }: ReportContext, { figures }: ReportEntry, width: number): readonly Line[] {
  if (figures.length === 0) return [];
  return runOn(
    [
      { face: faces.bold, size: type.small, text: "Measured: " },
      { face: faces.regular, size: type.small, text: `${figures.map(figureText).join("; ")}.` },
    ],
    width,
  );
}

/** One car: its number large, the decision, then what was not passed and what was measured. */
export function drawReportEntry(context: ReportContext, entry: ReportEntry): void {
  const { flow, faces } = context;
  const { left, right } = flow.box;
  const x = left + numberWidth;
  const width = right - x;
  const decisionX = left + (right - left) * 0.58;
  const who = [entry.chassis, entry.car].filter((part) => part !== "").join(", ");
  const more = [
    entry.driver,
    entry.className === "" ? "" : `class ${entry.className}`,
    entry.group === "" ? "" : `group ${entry.group}`,
  ];
  const head: readonly Cell[] = [
    { x: left, lines: block(faces.bold, type.event, entry.number, numberWidth - 6) },
    {
      x,
      lines: [
        ...block(faces.bold, type.name, who, decisionX - x - 10),
        ...block(
          faces.regular,
          type.small,
          more.filter((part) => part !== "").join(" · "),
          decisionX - x - 10,
        ),
      ],
    },
    {
      x: decisionX,
      lines: [
        ...block(faces.bold, type.name, sentence(entry.outcome), right - decisionX),
        ...block(faces.regular, type.small, decisionText(entry), right - decisionX),
      ],
    },
  ];
  flow.ensure(60);
  drawRow(flow, { cells: head, padding: 4, ruled: false });
  const counts = block(faces.regular, type.small, countsText(entry), width);
  const lines = isUntouched(entry)
    ? counts
    : [...counts, ...pointLines(context, entry, width), ...figureLines(context, entry, width)];
  drawRow(flow, { cells: [{ x, lines }], padding: 2, ruled: false });
  flow.y -= 3;
  flow.page.line([left, flow.y, right, flow.y], { stroke: rule.line });
}

const sentence = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

function decisionText({ decided, decisionNote, signedBy, presented, outcome }: ReportEntry): string {
  const before = presented - (outcome === "refused" ? 1 : 0);
  return [
    decided,
    decisionNote === "" ? "" : `“${decisionNote}”`,
    signedBy === "" ? "" : `signed by ${signedBy}`,
    before > 0 ? `refused ${before === 1 ? "once" : `${before} times`} before` : "",
  ]
    .filter((part) => part !== "")
    .join("; ");
}
