import type { CheckReading, SheetCheck } from "@trunnion/register";
import type { ContentWriter } from "../content/content-writer";
import type { Face, Faces } from "../font/face";
import { blockHeight, drawBlock, type Line, runOn } from "../layout/row";
import { leading, rule } from "../layout/style";
import { drawWriteBox } from "../mark/box";
import type { Span } from "../text/wrap";
import { firstLines } from "./bounded-text";

export const results = ["pass", "advise", "refuse", "not-applicable"] as const;
export const resultWords = ["P", "A", "R", "–"] as const;

/** How closely checks are set: the widest that fits two pages is taken. None is below eight points. */
export interface Density {
  readonly body: number;
  readonly padding: number;
  /** Lines a reason may take; it begins a line of its own, or where none is given runs on from the check. */
  readonly why?: number;
  /** From line to line, in type sizes, where closer than elsewhere. */
  readonly leading?: number;
  /** Room to write down what was not on record. */
  readonly found: number;
}

export const densities: readonly Density[] = [
  { body: 9, padding: 2.2, why: 4, found: 46 },
  { body: 8.6, padding: 1.6, why: 4, found: 46 },
  { body: 8.3, padding: 1, why: 3, found: 40 },
  { body: 8, padding: 0.7, why: 3, found: 34 },
  { body: 8, padding: 0.3, found: 28 },
  { body: 8, padding: 0, found: 0 },
  { body: 8, padding: 0, leading: 1.14, found: 0 },
];

/** Across a column: four boxes to cross, the check's number, its words, room for figures where it asks for some. */
const pitch = 11;
export const boxesWidth = results.length * pitch;
/** What is not on record has one box: seen, and written down. */
const seenWidth = pitch;
const numberWidth = 15;
const readingHeight = 11.5;
const readingWidth = 31;
/** Lines a check may take. */
const mostText = 6;

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
  /** Rows of this sheet's checks, asked once a check however many settings are tried. */
  readonly found: Map<SheetCheck, Map<Density, Measured>>;
}

/** Only what is measured or to be written down has room beside it: a remark goes to the notes, with the number. */
function noteWidthOf({ readings, undecided }: SheetCheck, { found }: Density): number {
  if (undecided) return found;
  return readings.length === 0 ? 0 : Math.min(2, readings.length) * readingWidth + 2;
}

export type Measured = Pick<CheckRow, "lines" | "height">;

/**
 * Rows kept, since most checks of an event stand alike on every car's sheet, by what they say, then by how closely they
 * are set; room for several rule sets.
 */
const mostKept = 4_000;
const kept = new Map<string, Map<Density, Measured>>();

function keptFor(check: SheetCheck, { width, common, footnote, found }: RowSetting): Map<Density, Measured> {
  const known = found.get(check);
  if (known) return known;
  const { short, why, caution = "", readings, special, undecided } = check;
  const told = why === common && !special ? "" : why;
  const form = `${width} ${footnote(check.source) ?? 0} ${readings.length} ${special} ${undecided}`;
  const key = `${form}\n${short}\n${told}\n${caution}\n${wantedOf(check)}`;
  if (kept.size >= mostKept) kept.clear();
  const rows = kept.get(key) ?? new Map<Density, Measured>();
  kept.set(key, rows);
  found.set(check, rows);
  return rows;
}

export function checkRow(check: SheetCheck, number: number, setting: RowSetting): CheckRow {
  const rows = keptFor(check, setting);
  const { density } = setting;
  const known = rows.get(density) ?? measured(check, setting);
  rows.set(density, known);
  return { check, number, ...known };
}

function measured(check: SheetCheck, setting: RowSetting): Pick<CheckRow, "lines" | "height"> {
  const { body, padding, leading: own = leading } = setting.density;
  const lines = linesOf(check, setting).map((line) => ({ ...line, leading: own }));
  const readings = Math.ceil(check.readings.length / 2) * readingHeight;
  const height = Math.max(blockHeight(lines), body * own, readings) + 2 * padding;
  return { lines, height };
}

/** What makes it pass, where the car's own limit does not say it. */
function wantedOf({ wanted, limit }: SheetCheck): string {
  return limit ?? wanted;
}

function linesOf(check: SheetCheck, { faces, density, width, common, footnote }: RowSetting): Line[] {
  const { regular, bold } = faces;
  const { body } = density;
  const note = footnote(check.source);
  const mark = note === undefined ? "" : raised(note);
  const span = (face: Face, text: string): Span => ({ face, size: body, text });
  if (check.undecided) {
    const room = width - seenWidth - noteWidthOf(check, density) - 6;
    const asked = wantedOf(check);
    const found = asked === "" ? check.short : `${check.short}: ${asked}`;
    return firstLines(found, { face: regular, size: body, width: room, most: mostText });
  }
  const room =
    width - boxesWidth - numberWidth - noteWidthOf(check, density) - (check.readings.length > 0 ? 3 : 0);
  const wanted = wantedOf(check);
  const caution = check.caution === undefined ? "" : ` Caution: ${check.caution}.`;
  const rest = [span(bold, wanted === "" ? "" : ` ${wanted}.`), span(bold, caution)];
  const what = span(check.special ? bold : regular, `${check.short}${mark}${wanted === "" ? "" : ":"}`);
  const why = !check.special && check.why === common ? "" : check.why;
  const told = span(regular, why === "" || density.why !== undefined ? "" : ` ${why}`);
  if (why === "" || density.why === undefined) return cut(runOn([what, ...rest, told], room), mostText);
  const reason = firstLines(why, { face: regular, size: body, width: room, most: density.why });
  return [...cut(runOn([what, ...rest], room), mostText), ...reason];
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

/** Capitals stand in the middle of their line, not at its top: rows are ruled close. */
const sink = 1.2;

interface Place {
  readonly x: number;
  readonly top: number;
  readonly width: number;
}

/** Draws a row at a place; with the fields that a fillable file has there. */
export function drawCheckRow(
  page: ContentWriter,
  row: CheckRow,
  { x, top, width }: Place,
  { faces, density }: RowSetting,
): void {
  const { check, number, lines, height } = row;
  const words = x + (check.undecided ? seenWidth + 4 : boxesWidth + numberWidth);
  page.part("LI", () => {
    page.mark("LBody", () => {
      if (!check.undecided)
        page.text({
          face: faces.regular,
          size: 7,
          x: words - 3,
          y: top - sink - density.padding - density.body * 0.78,
          text: String(number),
          align: "right",
        });
      drawBlock(page, lines, words, top - sink - density.padding);
    });
    drawBoxes(page, row, { x, top });
    const noteWidth = noteWidthOf(check, density);
    if (noteWidth > 0)
      drawNote(page, row, { x: x + width - noteWidth, top, width: noteWidth }, faces.regular);
  });
  drawGrid(page, { x, top, width }, check.undecided ? 1 : results.length, height);
  if (check.undecided)
    page.line([x - 3.2, top - 2, x - 3.2, top - height + 2], { stroke: 1.5, dash: "2.4 1.8" });
  else if (check.special) page.rect([x - 4.5, top - height + 1, 3, height - 2], { fill: "red" });
}

/** The rule under a row and the uprights of its boxes; what lies between two is the box. */
function drawGrid(page: ContentWriter, { x, top, width }: Place, boxes: number, height: number): void {
  const bottom = top - height;
  page.line([x, bottom, x + width, bottom], { stroke: rule.hair });
  page.uprights(
    Array.from({ length: boxes + 1 }, (_, at) => x + at * pitch),
    [bottom, top],
    rule.hair,
  );
}

/** Side of a box's field: what is crossed on a screen stands in the middle of its cell. */
const fieldSide = 9;

function drawBoxes(page: ContentWriter, { check, height }: CheckRow, { x, top }: Omit<Place, "width">): void {
  const choices = check.undecided ? results.slice(0, 1) : results;
  const inset = (pitch - fieldSide) / 2;
  const bottom = top - Math.min(height, pitch) / 2 - fieldSide / 2;
  page.field({
    name: `check.${check.id}.result`,
    kind: "choice",
    boxes: choices.map((_, at) => [x + at * pitch + inset, bottom, fieldSide, fieldSide] as const),
    choices,
    title: `Result: ${check.text.slice(0, 120)}`,
  });
}

function drawNote(
  page: ContentWriter,
  { check, height }: CheckRow,
  { x, top, width }: Place,
  face: Face,
): void {
  if (check.undecided) {
    page.line([x, top, x, top - height], { stroke: rule.hair });
    page.field({
      name: `check.${check.id}.note`,
      kind: "lines",
      boxes: [[x + 1.5, top - height + 1, width - 2, height - 2]],
      title: `Found: ${check.text.slice(0, 120)}`,
    });
    return;
  }
  const across = Math.min(2, check.readings.length);
  const offset = (height - Math.ceil(check.readings.length / 2) * readingHeight) / 2;
  check.readings.forEach((reading, at) => {
    drawReading(page, reading, {
      check,
      face,
      x: x + 2 + (at % across) * readingWidth,
      top: top - Math.min(offset, 1) - Math.floor(at / across) * readingHeight,
    });
  });
}

interface ReadingPlace {
  readonly check: SheetCheck;
  readonly face: Face;
  readonly x: number;
  readonly top: number;
}

/** The open box a figure is written into, and its side or corner before it. */
function drawReading(page: ContentWriter, { key, label }: CheckReading, place: ReadingPlace): void {
  const { check, face, x, top } = place;
  const indent = label === "" ? 0 : label.length > 1 ? 8 : 5;
  if (label !== "") page.text({ face, size: 6.2, x, y: top - 8.5, text: label });
  const width = readingWidth - indent - 2;
  drawWriteBox(page, { x: x + indent, top: top - 0.8, width, height: readingHeight - 1.8 });
  page.field({
    name: `check.${check.id}.reading.${key}`,
    kind: "text",
    boxes: [[x + indent + 0.5, top - readingHeight + 1, width - 1, readingHeight - 1.5]],
    title: `Reading${label === "" ? "" : ` ${label}`}: ${check.text.slice(0, 100)}`,
  });
}
