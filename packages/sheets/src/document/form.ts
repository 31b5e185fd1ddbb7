import type { FieldSpot } from "../content/content-writer";
import type { PdfFile } from "./pdf-file";
import { numberText, type Ref, refsText, refText, textObject } from "./pdf-text";
import { pack } from "./stream";

/** Longest text a field takes. */
export const longestEntry = 400;

const RADIO = 1 << 15;
const READ_ONLY = 1;
const MULTILINE = 1 << 12;
const PRINT = 4;
const HIDDEN = 2;

/** A page as its fields need it. */
export interface FormPage {
  readonly ref: Ref;
  readonly fields: readonly FieldSpot[];
}

/** What a field's widgets are called in the structure tree, where there is one. */
export type TellWidget = (page: Ref, field: string, widget: Ref) => number | undefined;

/**
 * The fields of a file that can be filled in. Each has an appearance of its own, so that no reader has to make one;
 * boxes to cross share two drawings, but never the dictionary that names them, or readers would show one's entry in all.
 */
export class FormWriter {
  private readonly cars: Ref[] = [];
  private readonly names = new Map<string, number>();
  private readonly crossed: Ref;
  private readonly empty: Ref;
  private readonly font: Ref;

  constructor(
    private readonly file: PdfFile,
    private readonly tell: TellWidget,
  ) {
    this.crossed = this.drawing("1.6 w 1 J 2.2 2.2 m 8.8 8.8 l 2.2 8.8 m 8.8 2.2 l S");
    this.empty = this.drawing("");
    this.font = file.add("<</Type/Font/Subtype/Type1/BaseFont/Helvetica/Encoding/WinAnsiEncoding>>");
  }

  /** Writes one car's fields under its number; answers the widgets of each page, in the pages' order. */
  addCar(number: string, pages: readonly FormPage[]): readonly (readonly Ref[])[] {
    const car = this.file.nextRef();
    const kids: Ref[] = [];
    const widgets = pages.map((page) =>
      page.fields.flatMap((spot) => {
        const [field, its] =
          spot.kind === "choice" ? this.choice(car, page, spot) : this.text(car, page, spot);
        kids.push(field);
        return its;
      }),
    );
    const name = textObject(this.carName(number));
    this.file.put(car, `<</T${name}/Kids${refsText(kids)}>>`);
    this.cars.push(car);
    return widgets;
  }

  /** The form dictionary, for the catalogue. */
  finish(): Ref {
    const fields = this.cars.map(refText).join(" ");
    return this.file.add(
      `<</Fields[${fields}]/DR<</Font<</Helv ${refText(this.font)}>>>>/DA(/Helv 0 Tf 0 g)>>`,
    );
  }

  /** "no-42"; a number that comes twice gets its place too, since a reader takes like names for one field. */
  private carName(number: string): string {
    const base = `no-${number.replace(/[^A-Za-z0-9]+/g, "-") || "none"}`;
    const before = this.names.get(base) ?? 0;
    this.names.set(base, before + 1);
    return before === 0 ? base : `${base}-${before + 1}`;
  }

  private choice(car: Ref, page: FormPage, { name, title, boxes, choices = [] }: FieldSpot) {
    const { file } = this;
    const field = file.nextRef();
    const widgets = boxes.map((box, at) => {
      const ref = file.nextRef();
      const on = `/${choices[at] ?? "on"}`;
      const states = `${on} ${refText(this.crossed)}/Off ${refText(this.empty)}`;
      const widget = `${this.widget(page, name, ref, box)}/Parent ${refText(field)}/AS/Off/MK<</CA(8)>>/AP<</N<<${states}>>>>>>`;
      file.put(ref, widget);
      return ref;
    });
    const kids = widgets.map(refText).join(" ");
    file.put(
      field,
      `<</FT/Btn/Ff ${RADIO}/T${textObject(partName(name))}/TU${textObject(title)}/Parent ${refText(car)}/V/Off/Kids[${kids}]>>`,
    );
    return [field, widgets] as const;
  }

  private text(car: Ref, page: FormPage, spot: FieldSpot) {
    const { name, title, boxes, kind, size = 7.5, value } = spot;
    const [box = [0, 0, 0, 0]] = boxes;
    const ref = this.file.nextRef();
    const flags = (kind === "lines" ? MULTILINE : 0) + (kind === "hidden" ? READ_ONLY : 0);
    const held = value === undefined ? "" : `/V${textObject(value)}`;
    const field =
      `${this.widget(page, name, ref, box, kind === "hidden" ? HIDDEN : PRINT)}/FT/Tx/Ff ${flags}` +
      `/T${textObject(partName(name))}/TU${textObject(title)}/Parent ${refText(car)}${held}` +
      `/MaxLen ${longestEntry}/DA(/Helv ${numberText(size)} Tf 0 g)/AP<</N ${refText(this.empty)}>>>>`;
    this.file.put(ref, field);
    return [ref, [ref]] as const;
  }

  private widget(
    page: FormPage,
    name: string,
    ref: Ref,
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

  private drawing(operators: string): Ref {
    const entries = "/Type/XObject/Subtype/Form/BBox[0 0 11 11]/Resources<<>>";
    return this.file.addStream(pack(Buffer.from(operators, "latin1"), entries));
  }
}

/** A part of a field's name may hold no dot: "check.camber.note" stands as "check/camber/note" under its car. */
export const partName = (name: string): string => name.replaceAll(".", "/");
