import { Broken } from "./broken";
import { TiffReader } from "./tiff-directory";

const EXIF_DIRECTORY = 34665;
/** When the picture was taken (Exif 2.32, 4.6.5 D); the file's and the scanner's dates say other things. */
const DATE_TIME_ORIGINAL = 36867;

function textOf(reader: TiffReader, directoryAt: number): string | undefined {
  const entry = reader.directory(directoryAt).entries.find(({ tag }) => tag === DATE_TIME_ORIGINAL);
  return entry && reader.bytes.toString("latin1", entry.valuesAt, entry.valuesAt + entry.length);
}

function dayIn(text: string | undefined): string | undefined {
  const [, year = "", month = "", day = ""] = /^(\d{4})[:-](\d{2})[:-](\d{2})/.exec(text ?? "") ?? [];
  const iso = `${year}-${month}-${day}`;
  const instant = new Date(`${iso}T00:00:00Z`);
  // The thirtieth of February is no day, nor is what cameras write that do not know: 0000:00:00.
  return Number.isNaN(instant.getTime()) || instant.toISOString().slice(0, 10) !== iso ? undefined : iso;
}

/**
 * The day a camera says it took the picture on, ISO, by the camera's own clock and place; nothing where it does not say,
 * or says what is no day. What cannot be read says nothing: it is no reason to refuse a picture.
 *
 * @param tiff EXIF as it stands in the file, with or without its `Exif` head, or a whole TIFF
 */
export function dayTaken(tiff: Buffer): string | undefined {
  try {
    const head = tiff.toString("latin1", 0, 6) === "Exif\0\0" ? 6 : 0;
    const reader = new TiffReader(tiff.subarray(head));
    const { entries } = reader.directory(reader.first);
    const lead = entries.find(({ tag }) => tag === EXIF_DIRECTORY);
    return lead && dayIn(textOf(reader, reader.long(lead.valuesAt)));
  } catch (error) {
    if (error instanceof Broken) return undefined;
    throw error;
  }
}
