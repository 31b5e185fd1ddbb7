import type { DossierRow } from "@trunnion/register";
import { drawColumns, drawHeading } from "../layout/heading";
import { block, drawRow, runOn } from "../layout/row";
import { type } from "../layout/style";
import { drawVerdictMark } from "../mark/verdict-mark";
import type { DossierContext } from "./dossier-context";

interface Columns {
  readonly label: number;
  readonly actual: number;
  readonly specified: number;
  readonly verdict: number;
  readonly end: number;
}

function columns({ flow }: DossierContext): Columns {
  const { left, right } = flow.box;
  const width = right - left;
  return {
    label: left + 16,
    actual: left + width * 0.32,
    specified: left + width * 0.55,
    verdict: left + width * 0.78,
    end: right,
  };
}

export interface RowTable {
  readonly title: string;
  readonly note: string;
  readonly rows: readonly DossierRow[];
}

/** Characteristics with what the car has, what was specified, the verdict, and how it is known. */
export function drawRowTable(context: DossierContext, { title, note, rows }: RowTable): void {
  const { flow } = context;
  const at = columns(context);
  const head = () =>
    drawColumns(context, [
      { x: at.label, text: "Characteristic" },
      { x: at.actual, text: "On the car" },
      { x: at.specified, text: "Specified" },
      { x: at.verdict, text: "Verdict" },
    ]);
  flow.ensure(60);
  drawHeading(context, { title, note });
  head();
  flow.onContinue = () => {
    drawHeading(context, { title, note: "continued" });
    head();
  };
  for (const row of rows) drawTableRow(context, at, row);
  flow.onContinue = undefined;
  flow.y -= 8;
}

function drawTableRow({ flow, faces }: DossierContext, at: Columns, row: DossierRow): void {
  const { regular, bold } = faces;
  const text = (words: string, width: number, face = regular) => block(face, type.body, words, width);
  const known = row.known === "" ? [] : block(regular, type.fine, row.known, at.specified - at.actual - 6);
  drawRow(flow, {
    padding: 2,
    minimum: 14,
    cells: [
      { x: at.label, lines: text(row.label, at.actual - at.label - 6) },
      {
        x: at.actual,
        lines: [
          ...text(row.actual === "" ? "not recorded" : row.actual, at.specified - at.actual - 6, bold),
          ...known,
        ],
      },
      { x: at.specified, lines: text(row.specified, at.verdict - at.specified - 6) },
      {
        x: at.verdict,
        lines: runOn(
          [
            { face: regular, size: type.body, text: row.verdictText },
            { face: regular, size: type.small, text: row.difference === "" ? "" : ` ${row.difference}` },
          ],
          at.end - at.verdict,
        ),
      },
    ],
    decorate: (page, top) => drawVerdictMark(page, [flow.box.left + 6, top - 7.5], row.verdict),
  });
}
