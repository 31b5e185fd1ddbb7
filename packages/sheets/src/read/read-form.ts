import { PDFArray, PDFDict, PDFDocument, PDFHexString, PDFName, type PDFObject, PDFString } from "pdf-lib";

/** One sheet's fields as a file has them; what is empty is left out. */
export interface FormSheet {
  readonly code: string;
  readonly record: string;
  /** "check/front-camber/result" → "pass". */
  readonly fields: Readonly<Record<string, string>>;
}

/** What a dropped file turned out to be. */
export type FormReading =
  | { readonly kind: "sheets"; readonly sheets: readonly FormSheet[] }
  /** It breaks off, or is no PDF. */
  | { readonly kind: "damaged" }
  | { readonly kind: "encrypted" }
  /** A sound PDF, but none with this program's fields. */
  | { readonly kind: "foreign" };

/** Largest file read, bytes: 2,000 filled-in sheets take some hundred megabytes less. */
export const FORM_FILE_LIMIT = 40_000_000;
/** Cars and fields looked at in one file; far above any event. */
const mostCars = 2_000;
const mostFields = 600;

const text = (bytes: Uint8Array) =>
  Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString("latin1");

/**
 * Reads what was filled in on sheets printed by this program. Only names and values are taken from the file; what the
 * sheet said is known from when it was printed, never from the file.
 */
export async function readSheetForm(bytes: Uint8Array): Promise<FormReading> {
  // A reader that mends broken files would give half a sheet for a whole one.
  const head = text(bytes.subarray(0, 1_024));
  const tail = text(bytes.subarray(-2_048));
  if (!head.includes("%PDF-") || !tail.includes("%%EOF")) return { kind: "damaged" };
  let document: PDFDocument;
  try {
    document = await PDFDocument.load(bytes, { updateMetadata: false, ignoreEncryption: true });
  } catch {
    return { kind: "damaged" };
  }
  if (document.isEncrypted) return { kind: "encrypted" };
  try {
    const sheets = carsOf(document).flatMap((car) => sheetOf(car) ?? []);
    return sheets.length === 0 ? { kind: "foreign" } : { kind: "sheets", sheets };
  } catch {
    return { kind: "damaged" };
  }
}

function carsOf(document: PDFDocument): readonly PDFDict[] {
  const form = document.catalog.lookup(PDFName.of("AcroForm"));
  if (!(form instanceof PDFDict)) return [];
  return kidsOf(form, "Fields").slice(0, mostCars);
}

function kidsOf(dict: PDFDict, name: string): readonly PDFDict[] {
  const kids = dict.lookup(PDFName.of(name));
  if (!(kids instanceof PDFArray)) return [];
  return Array.from({ length: Math.min(kids.size(), mostCars) }, (_, at) => kids.lookup(at)).filter(
    (kid) => kid instanceof PDFDict,
  );
}

function sheetOf(car: PDFDict): FormSheet | undefined {
  if (!/^no-/.test(stringOf(car.lookup(PDFName.of("T"))))) return undefined;
  const fields = new Map<string, string>();
  for (const field of kidsOf(car, "Kids").slice(0, mostFields)) {
    const name = stringOf(field.lookup(PDFName.of("T")));
    const value = valueIn(field);
    if (name !== "" && value !== "") fields.set(name, value);
  }
  const code = fields.get("sheet");
  const record = fields.get("record");
  if (code === undefined || record === undefined) return undefined;
  fields.delete("sheet");
  fields.delete("record");
  return { code, record, fields: Object.fromEntries(fields) };
}

/** A box's state stands in the field, or with programs that write only half, in the box that is crossed. */
function valueIn(field: PDFDict): string {
  const value = field.lookup(PDFName.of("V"));
  if (value instanceof PDFName) {
    if (value.decodeText() !== "Off") return value.decodeText();
  } else if (value !== undefined) return stringOf(value);
  for (const kid of kidsOf(field, "Kids")) {
    const state = kid.lookup(PDFName.of("AS"));
    if (state instanceof PDFName && state.decodeText() !== "Off") return state.decodeText();
  }
  return "";
}

function stringOf(object: PDFObject | undefined): string {
  if (object instanceof PDFString || object instanceof PDFHexString)
    return object.decodeText().slice(0, 2_000);
  return "";
}
