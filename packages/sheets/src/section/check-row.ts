import type { CheckReading, SheetCheck } from "@trunnion/register";
import type { ContentWriter } from "../content/content-writer";
import type { Face, Faces } from "../font/face";
import { blockHeight, drawBlock, type Line, runOn } from "../layout/row";
import { rule } from "../layout/style";
import { drawCheckBox, drawWriteBox } from "../mark/box";
import { firstLines } from "./bounded-text";

export const results = ["pass", "advise", "refuse", "not-applicable"] as const;
export const resultWords = ["P", "A", "R", "–"] as const;

/** How closely checks are set: the widest that fits two pages is taken. */
export interface Density {
  readonly body: number;
  readonly small: number;
  readonly padding: number;
  /** Width of the place for figure and note. */
  readonly note: number;
  /** Lines a reason may take. */
  readonly why: number;
  /** Lines that criterion and caution may take; how it is done is said only where there are more than two. */
  readonly rest: number;
}

export const densities: readonly Density[] = [
  { body: 8.8, small: 7.4, padding: 2.6, note: 46, why: 4, rest: 4 },
  { body: 8.4, small: 7.1, padding: 1.8, note: 44, why: 3, rest: 4 },
  { body: 8, small: 6.8, padding: 1.3, note: 38, why: 2, rest: 4 },
  { body: 7.6, small: 6.5, padding: 0.8, note: 33, why: 1, rest: 3 },
  { body: 7.4, small: 6.3, padding: 0.6, note: 20, why: 1, rest: 2 },
];

/** Across a column: four boxes, the check's number, its words, a place for figure and note. */
const pitch = 12.6;
/** What is not on record has one box: seen, and written down. */
const seenWidth = pitch + 2;
const box = 11;
export const boxesWidth = results.length * pitch + 2;
const numberWidth = 12;
const readingHeight = 13;
/** Room for a note below the readings. */
const noteHeight = 9;
/** Lines a check may take. */
const mostText = 5;

export interface CheckRow {
  readonly check: SheetCheck;
  readonly number: number;
  readonly lines: readonly Line[];
  readonly height: number;
}

export interface RowSetting {
  readonly faces: Faces;
  readonly density: Density;
  readonly width: number;
  /** Reason most ordinary checks share. */
  readonly common: string;
  /** Number of a source in the list at the end; none for common practice. */
  readonly footnote: (source: string) => number | undefined;
}

/** Figures need room for a figure, however close the rest is set. */
function noteWidthOf({ readings }: SheetCheck, { note }: Density): number {
  return readings.length === 0 ? note : Math.max(note, readings.length > 2 ? 62 : 40);
}

/** Rows kept, since most checks of an event stand alike on every car's sheet; room for several rule sets. */
const mostKept = 4_000;
const kept = new Map<string, Pick<CheckRow, "lines" | "height">>();

export function checkRow(check: SheetCheck, number: number, setting: RowSetting): CheckRow {
  const { density, width, common, footnote } = setting;
  const { text, why, method = "", caution = "", limit = "", criterion, readings, special, undecided } = check;
  const wanted = "text" in criterion ? criterion.text : "";
  const source = footnote(check.source) ?? 0;
  const told = why === common && !special ? "" : why;
  const key = [
    density.body,
    width,
    source,
    readings.length,
    special,
    undecided,
    text,
    told,
    method,
    caution,
    limit,
    wanted,
  ].join("\n");
  const known = kept.get(key) ?? measured(check, setting);
  if (kept.size >= mostKept) kept.clear();
  kept.set(key, known);
  return { check, number, ...known };
}

function measured(check: SheetCheck, setting: RowSetting): Pick<CheckRow, "lines" | "height"> {
  const lines = linesOf(check, setting);
  const { readings: asked } = check;
  const stacked = asked.length > 2 ? Math.ceil(asked.length / 2) : asked.length;
  const readings = stacked * readingHeight + (stacked > 0 ? noteHeight : 0);
  const boxes = box + 2 * Math.min(1.8, setting.density.padding + 0.2);
  const height = Math.max(blockHeight(lines) + 2 * setting.density.padding, boxes, readings);
  return { lines, height };
}

function linesOf(check: SheetCheck, { faces, density, width, common, footnote }: RowSetting): Line[] {
  const { regular, bold } = faces;
  const { body, small } = density;
  const note = footnote(check.source);
  const text = `${check.text}${note === undefined ? "" : raised(note)}`;
  if (check.undecided) {
    const room = width - seenWidth - noteWidthOf(check, density) - 4;
    const wanted = "text" in check.criterion ? ` ${sentence(check.criterion.text)}` : "";
    return firstLines(`${text}${wanted}`, { face: regular, size: small, width: room, most: mostText });
  }
  const room = width - boxesWidth - numberWidth - noteWidthOf(check, density) - 4;
  const { criterion } = check;
  const wanted = "text" in criterion ? criterion.text : "";
  const caution = check.caution === undefined ? "" : `Caution: ${check.caution}`;
  const span = (face: Face, size: number, words: string) => ({
    face,
    size,
    text: words === "" ? "" : `${sentence(words)} `,
  });
  const what = { face: check.special ? bold : regular, size: body, text: `${text} ` };
  const rest = [
    span(bold, small, caution),
    span(bold, small, check.limit ?? wanted),
    span(regular, small, density.rest > 2 ? (check.method ?? "") : ""),
  ];
  const why = !check.special && check.why === common ? "" : check.why;
  if (why === "") return cut(runOn([what, ...rest], room), mostText + density.rest);
  const reason = firstLines(sentence(why), { face: regular, size: small, width: room, most: density.why });
  return [...cut(runOn([what], room), mostText), ...reason, ...cut(runOn(rest, room), density.rest)];
}

/** Lines beyond the bound end in an ellipsis. */
function cut(lines: readonly Line[], bound: number): Line[] {
  const last = lines[bound - 1];
  if (lines.length <= bound || last === undefined) return [...lines];
  const spans = last.spans.map((span, at) =>
    at < last.spans.length - 1 ? span : { ...span, text: `${span.text.slice(0, -2).trimEnd()}…` },
  );
  return [...lines.slice(0, bound - 1), { ...last, spans }];
}

const raisedDigits = [..."⁰¹²³⁴⁵⁶⁷⁸⁹"];

/** A footnote's number, raised; of the word it follows, so that it starts no line. */
export function raised(number: number): string {
  return [...String(number)].map((digit) => raisedDigits[Number(digit)]).join("");
}

/** Rules come with and without a full stop; the lines of a check each stand alone. */
function sentence(text: string): string {
  const bare = text.trim();
  return bare === "" || /[.!?…]["”’)]?$/.test(bare) ? bare : `${bare}.`;
}

/** Draws a row at a place; with the fields that a fillable file has there. */
export function drawCheckRow(
  page: ContentWriter,
  row: CheckRow,
  place: { readonly x: number; readonly top: number; readonly width: number },
  { faces, density }: RowSetting,
): void {
  const { check, number, lines, height } = row;
  const { x, top, width } = place;
  const left = x + (check.undecided ? seenWidth - numberWidth : boxesWidth);
  const noteWidth = noteWidthOf(check, density);
  const noteX = x + width - noteWidth;
  page.part("LI", () => {
    page.mark("LBody", () => {
      if (!check.undecided) {
        page.text({
          face: faces.regular,
          size: 6.5,
          x: left + numberWidth - 3,
          y: top - density.padding - density.body * 0.78,
          text: String(number),
          align: "right",
        });
      }
      drawBlock(page, lines, left + numberWidth, top - density.padding);
    });
    drawBoxes(page, row, { x, top });
    drawNote(page, row, { x: noteX, top, width: noteWidth, face: faces.regular });
  });
  page.line([noteX, top, noteX, top - height], { stroke: rule.hair });
  page.line([x, top - height, x + width, top - height], { stroke: rule.hair });
  if (check.undecided)
    page.line([x - 3.2, top - 2, x - 3.2, top - height + 2], { stroke: 1.5, dash: "2.4 1.8" });
  else if (check.special) page.rect([x - 4.5, top - height + 1.5, 3, height - 3], { fill: "red" });
}

/** Boxes stand a little below the row's rule. */
const drop = 1.2;

function drawBoxes(page: ContentWriter, { check }: CheckRow, { x, top }: { x: number; top: number }): void {
  const choices = check.undecided ? results.slice(0, 1) : results;
  const boxes = choices.map((_, at) => [x + at * pitch, top - drop - box, box, box] as const);
  for (const [boxX, , , side] of boxes) drawCheckBox(page, boxX, top - drop, side);
  page.field({
    name: `check.${check.id}.result`,
    kind: "choice",
    boxes,
    choices,
    title: `Result: ${check.text.slice(0, 120)}`,
  });
}

function drawNote(
  page: ContentWriter,
  { check, height }: CheckRow,
  {
    x,
    top,
    width,
    face,
  }: { readonly x: number; readonly top: number; readonly width: number; readonly face: Face },
): void {
  const across = check.readings.length > 2 ? 2 : 1;
  check.readings.forEach((reading, at) => {
    const cell = (width - 1) / across;
    drawReading(page, reading, {
      check,
      face,
      x: x + (at % across) * cell,
      top: top - 1.5 - Math.floor(at / across) * readingHeight,
      width: cell,
    });
  });
  const y = top - 1.5 - Math.ceil(check.readings.length / across) * readingHeight;
  page.field({
    name: `check.${check.id}.note`,
    kind: "lines",
    boxes: [[x + 1.5, top - height + 1, width - 2, Math.max(4, y - (top - height) - 1)]],
    title: `Note: ${check.text.slice(0, 120)}`,
  });
}

interface ReadingPlace {
  readonly check: SheetCheck;
  readonly face: Face;
  readonly x: number;
  readonly top: number;
  readonly width: number;
}

/** The open box a figure is written into, and its side or corner before it. */
function drawReading(page: ContentWriter, { key, label }: CheckReading, place: ReadingPlace): void {
  const { check, face, x, top, width } = place;
  const indent = label === "" ? 3 : label.length > 1 ? 11 : 9;
  if (label !== "") page.text({ face, size: 6.2, x: x + 2, y: top - 9.5, text: label });
  drawWriteBox(page, { x: x + indent, top, width: width - indent, height: readingHeight - 1.5 });
  page.field({
    name: `check.${check.id}.reading.${key}`,
    kind: "text",
    boxes: [[x + indent + 0.5, top - readingHeight + 2, width - indent - 1, readingHeight - 2.5]],
    title: `Reading${label === "" ? "" : ` ${label}`}: ${check.text.slice(0, 100)}`,
  });
}
