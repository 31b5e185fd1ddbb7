import type { PDFContext, PDFRef } from "pdf-lib";
import type { FieldSpot } from "../content/content-writer";
import { numberText, RawObject, refText, textObject } from "./raw-object";
import { pack, streamOf } from "./stream";

/** Longest text a field takes. */
export const longestEntry = 400;

const RADIO = 1 << 15;
const READ_ONLY = 1;
const MULTILINE = 1 << 12;
const PRINT = 4;
const HIDDEN = 2;

/** A page as its fields need it. */
export interface FormPage {
  readonly ref: PDFRef;
  readonly fields: readonly FieldSpot[];
}

/** What a field's widgets are called in the structure tree, where there is one. */
export type TellWidget = (page: PDFRef, field: string, widget: PDFRef) => number | undefined;

/**
 * The fields of a file that can be filled in. Each has an appearance of its own, so that no reader has to make one;
 * boxes to cross share two drawings, but never the dictionary that names them, or readers would show one's entry in all.
 */
export class FormWriter {
  private readonly cars: PDFRef[] = [];
  private readonly names = new Map<string, number>();
  private readonly crossed: PDFRef;
  private readonly empty: PDFRef;
  private readonly font: PDFRef;

  constructor(
    private readonly context: PDFContext,
    private readonly tell: TellWidget,
  ) {
    this.crossed = this.drawing("1.6 w 1 J 2.2 2.2 m 8.8 8.8 l 2.2 8.8 m 8.8 2.2 l S");
    this.empty = this.drawing("");
    this.font = context.register(
      new RawObject("<</Type/Font/Subtype/Type1/BaseFont/Helvetica/Encoding/WinAnsiEncoding>>"),
    );
  }

  /** Writes one car's fields under its number; answers the widgets of each page, in the pages' order. */
  addCar(number: string, pages: readonly FormPage[]): readonly (readonly PDFRef[])[] {
    const car = this.context.nextRef();
    const kids: PDFRef[] = [];
    const widgets = pages.map((page) =>
      page.fields.flatMap((spot) => {
        const [field, its] =
          spot.kind === "choice" ? this.choice(car, page, spot) : this.text(car, page, spot);
        kids.push(field);
        return its;
      }),
    );
    const name = textObject(this.carName(number));
    this.context.assign(car, new RawObject(`<</T${name}/Kids[${kids.map(refText).join(" ")}]>>`));
    this.cars.push(car);
    return widgets;
  }

  /** The form dictionary, for the catalogue. */
  finish(): PDFRef {
    const fields = this.cars.map(refText).join(" ");
    return this.context.register(
      new RawObject(`<</Fields[${fields}]/DR<</Font<</Helv ${refText(this.font)}>>>>/DA(/Helv 0 Tf 0 g)>>`),
    );
  }

  /** "no-42"; a number that comes twice gets its place too, since a reader takes like names for one field. */
  private carName(number: string): string {
    const base = `no-${number.replace(/[^A-Za-z0-9]+/g, "-") || "none"}`;
    const before = this.names.get(base) ?? 0;
    this.names.set(base, before + 1);
    return before === 0 ? base : `${base}-${before + 1}`;
  }

  private choice(car: PDFRef, page: FormPage, { name, title, boxes, choices = [] }: FieldSpot) {
    const { context } = this;
    const field = context.nextRef();
    const widgets = boxes.map((box, at) => {
      const ref = context.nextRef();
      const on = `/${choices[at] ?? "on"}`;
      const states = `${on} ${refText(this.crossed)}/Off ${refText(this.empty)}`;
      const widget = `${this.widget(page, name, ref, box)}/Parent ${refText(field)}/AS/Off/MK<</CA(8)>>/AP<</N<<${states}>>>>>>`;
      context.assign(ref, new RawObject(widget));
      return ref;
    });
    const kids = widgets.map(refText).join(" ");
    context.assign(
      field,
      new RawObject(
        `<</FT/Btn/Ff ${RADIO}/T${textObject(partName(name))}/TU${textObject(title)}/Parent ${refText(car)}/V/Off/Kids[${kids}]>>`,
      ),
    );
    return [field, widgets] as const;
  }

  private text(car: PDFRef, page: FormPage, spot: FieldSpot) {
    const { name, title, boxes, kind, size = 7.5, value } = spot;
    const [box = [0, 0, 0, 0]] = boxes;
    const ref = this.context.nextRef();
    const flags = (kind === "lines" ? MULTILINE : 0) + (kind === "hidden" ? READ_ONLY : 0);
    const held = value === undefined ? "" : `/V${textObject(value)}`;
    const field =
      `${this.widget(page, name, ref, box, kind === "hidden" ? HIDDEN : PRINT)}/FT/Tx/Ff ${flags}` +
      `/T${textObject(partName(name))}/TU${textObject(title)}/Parent ${refText(car)}${held}` +
      `/MaxLen ${longestEntry}/DA(/Helv ${numberText(size)} Tf 0 g)/AP<</N ${refText(this.empty)}>>>>`;
    this.context.assign(ref, new RawObject(field));
    return [ref, [ref]] as const;
  }

  private widget(
    page: FormPage,
    name: string,
    ref: PDFRef,
    [x, y, width, height]: readonly [number, number, number, number] | readonly number[] = [],
    flags = PRINT,
  ): string {
    const rect = [x ?? 0, y ?? 0, (x ?? 0) + (width ?? 0), (y ?? 0) + (height ?? 0)]
      .map(numberText)
      .join(" ");
    const parent = this.tell(page.ref, name, ref);
    const structure = parent === undefined ? "" : `/StructParent ${parent}`;
    return `<</Type/Annot/Subtype/Widget/Rect[${rect}]/F ${flags}/P ${refText(page.ref)}${structure}`;
  }

  private drawing(operators: string): PDFRef {
    const packed = pack(Buffer.from(operators, "latin1"), {
      Type: "XObject",
      Subtype: "Form",
      BBox: [0, 0, 11, 11],
      Resources: {},
    });
    return this.context.register(streamOf(this.context, packed));
  }
}

/** A part of a field's name may hold no dot: "check.camber.note" stands as "check/camber/note" under its car. */
export const partName = (name: string): string => name.replaceAll(".", "/");
