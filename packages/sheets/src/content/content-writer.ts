import type { Face } from "../font/face";
import { textWidth } from "../font/face";
import { alwaysUsed } from "../font/repertoire";
import { encode } from "./text-string";

/**
 * What marks are made of. Text and lines are pure black on purpose: a black-and-white printer would break any
 * other ink into dots and blur small type. Marking-out red is for solid shapes only, and is dark enough in grey.
 */
export type Ink = "black" | "red" | "paper";

const fills: Record<Ink, string> = { black: "0 g", red: "0.69 0.07 0.1 rg", paper: "1 g" };
const strokes: Record<Ink, string> = { black: "0 G", red: "0.69 0.07 0.1 RG", paper: "1 G" };

/** How a shape is painted: filled, stroked with a line width in points, or both. */
export interface Paint {
  readonly fill?: Ink;
  readonly stroke?: number;
  readonly ink?: Ink;
  /** PDF dash array, e.g. "2 1.5". */
  readonly dash?: string;
}

export interface TextRun {
  readonly face: Face;
  readonly size: number;
  /** Left end, right end or middle of the baseline, as `align` says. */
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly align?: "left" | "right" | "centre";
  readonly ink?: Ink;
  /** Extra space after each character, points. */
  readonly spacing?: number;
}

export type Points = readonly (readonly [x: number, y: number])[];

/** Where a form field lies on a page; it becomes one only in a file that can be filled in. */
export interface FieldSpot {
  /** Name below the car's: "check.front-camber.note". */
  readonly name: string;
  readonly kind: "choice" | "text" | "lines" | "hidden";
  /** Lower left corner, width and height; one box a choice. */
  readonly boxes: readonly (readonly [x: number, y: number, width: number, height: number])[];
  /** Names of the choices, one a box. */
  readonly choices?: readonly string[];
  /** What a screen reader says of it. */
  readonly title: string;
  readonly size?: number;
  /** Value of a hidden field. */
  readonly value?: string;
}

/** What a piece of the page is, for those who have it read to them: a part with parts, or content with its number. */
export type StructureNode =
  | { readonly role: string; readonly parts: StructureNode[] }
  | { readonly role: string; readonly mark: number; readonly alternative?: string }
  | { readonly role: "Form"; readonly field: string };

/** Two decimals of a point are finer than any printer. */
function n(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a drawing coordinate is ${value}; it must be finite`);
  const hundredths = Math.round(Math.abs(value) * 100);
  const whole = Math.trunc(hundredths / 100);
  const part = hundredths - whole * 100;
  // Put together from small integers: several times faster than writing out a double.
  const sign = value < 0 && hundredths > 0 ? "-" : "";
  if (part === 0) return `${sign}${whole}`;
  return part % 10 === 0 ? `${sign}${whole}.${part / 10}` : `${sign}${whole}.${part < 10 ? "0" : ""}${part}`;
}

/** Writes one page's content stream as text; leaves out every state change that changes nothing. */
export class ContentWriter {
  /** Character groups drawn so far, for the font subset. */
  groups = alwaysUsed;
  readonly fields: FieldSpot[] = [];
  readonly structure: StructureNode[] = [];
  private branch = this.structure;
  private marks = 0;
  private marking: "none" | "artifact" | "content" = "none";
  private readonly operators: string[] = [];
  private font = "";
  private fill = fills.black;
  private stroke = strokes.black;
  private lineWidth = 1;
  private dash = "";
  private spacing = 0;

  /** @param tagged whether content is marked with what it is; what is not said to be anything is decoration */
  constructor(private readonly tagged = false) {}

  /** A part of the page that has parts: a list, a table, a row. */
  part(role: string, draw: () => void): void {
    const outer = this.branch;
    const parts: StructureNode[] = [];
    outer.push({ role, parts });
    this.branch = parts;
    draw();
    this.branch = outer;
  }

  /** Content that is something: a heading, a paragraph, a cell. */
  mark(role: string, draw: () => void, alternative?: string): void {
    if (!this.tagged || this.marking === "content") {
      draw();
      return;
    }
    this.closeMark();
    const mark = this.marks++;
    this.branch.push({ role, mark, ...(alternative === undefined ? {} : { alternative }) });
    this.operators.push(`/${role} <</MCID ${mark}>> BDC`);
    this.marking = "content";
    draw();
    this.closeMark();
  }

  field(spot: FieldSpot): void {
    this.fields.push(spot);
    this.branch.push({ role: "Form", field: spot.name });
  }

  text(run: TextRun): void {
    if (run.text === "") return;
    const { face, size, text, align = "left", spacing = 0 } = run;
    const { string, groups } = encode(text);
    this.groups |= groups;
    const width = align === "left" ? 0 : textWidth(face, size, text) + spacing * (text.length - 1);
    const x = run.x - (align === "right" ? width : width / 2);
    this.setFill(run.ink ?? "black");
    const font = `/${face.name} ${n(size)} Tf `;
    const change = font === this.font ? "" : font;
    const space = spacing === this.spacing ? "" : `${n(spacing)} Tc `;
    this.font = font;
    this.spacing = spacing;
    this.put(`BT ${change}${space}${n(align === "left" ? run.x : x)} ${n(run.y)} Td (${string}) Tj ET`);
  }

  line(ends: readonly [x1: number, y1: number, x2: number, y2: number], paint: Paint): void {
    this.path(`${n(ends[0])} ${n(ends[1])} m ${n(ends[2])} ${n(ends[3])} l`, paint);
  }

  /** Upright lines of one height, as one path. */
  uprights(
    places: readonly number[],
    [bottom, top]: readonly [bottom: number, top: number],
    width: number,
  ): void {
    const [low, high] = [n(bottom), n(top)];
    this.path(places.map((x) => `${n(x)} ${low} m ${n(x)} ${high} l`).join(" "), { stroke: width });
  }

  rect(box: readonly [x: number, y: number, width: number, height: number], paint: Paint): void {
    this.path(`${box.map(n).join(" ")} re`, paint);
  }

  polygon(points: Points, paint: Paint): void {
    this.path(`${polyline(points)} h`, paint);
  }

  polyline(points: Points, paint: Paint): void {
    this.path(polyline(points), paint);
  }

  circle(centre: readonly [x: number, y: number], radius: number, paint: Paint): void {
    const [x, y] = centre;
    const k = radius * 0.5523; // four cubic arcs, within 0.03 % of a circle
    const quarter = (...numbers: number[]) => `${numbers.map(n).join(" ")} c`;
    this.path(
      [
        `${n(x + radius)} ${n(y)} m`,
        quarter(x + radius, y + k, x + k, y + radius, x, y + radius),
        quarter(x - k, y + radius, x - radius, y + k, x - radius, y),
        quarter(x - radius, y - k, x - k, y - radius, x, y - radius),
        quarter(x + k, y - radius, x + radius, y - k, x + radius, y),
        "h",
      ].join(" "),
      paint,
    );
  }

  /** Paints path operators that are already written out. */
  path(operators: string, paint: Paint): void {
    if (paint.fill !== undefined) this.setFill(paint.fill);
    if (paint.stroke !== undefined) this.setStroke(paint.stroke, paint.ink ?? "black", paint.dash ?? "");
    const finish = paint.fill === undefined ? "S" : paint.stroke === undefined ? "f" : "B";
    this.put(`${operators} ${finish}`);
  }

  /** Places a drawing kept once in the document. */
  form(name: string, x: number, y: number, scale = 1): void {
    this.put(`q ${n(scale)} 0 0 ${n(scale)} ${n(x)} ${n(y)} cm /${name} Do Q`);
  }

  /** Places a picture kept once in the document into a box. */
  picture(
    name: string,
    [x, y, width, height]: readonly [x: number, y: number, width: number, height: number],
  ): void {
    this.put(`q ${n(width)} 0 0 ${n(height)} ${n(x)} ${n(y)} cm /${name} Do Q`);
  }

  bytes(): Uint8Array {
    this.closeMark();
    return Buffer.from(this.operators.join("\n"), "latin1");
  }

  private put(operator: string): void {
    if (this.tagged && this.marking === "none") {
      this.operators.push("/Artifact BMC");
      this.marking = "artifact";
    }
    this.operators.push(operator);
  }

  private closeMark(): void {
    if (this.marking !== "none") this.operators.push("EMC");
    this.marking = "none";
  }

  private setFill(ink: Ink): void {
    const fill = fills[ink];
    if (fill === this.fill) return;
    this.fill = fill;
    this.operators.push(fill);
  }

  private setStroke(width: number, ink: Ink, dash: string): void {
    const stroke = strokes[ink];
    if (stroke !== this.stroke) this.operators.push(stroke);
    if (width !== this.lineWidth) this.operators.push(`${n(width)} w`);
    if (dash !== this.dash) this.operators.push(`[${dash}] 0 d`);
    this.stroke = stroke;
    this.lineWidth = width;
    this.dash = dash;
  }
}

function polyline(points: Points): string {
  return points.map(([x, y], at) => `${n(x)} ${n(y)} ${at === 0 ? "m" : "l"}`).join(" ");
}
