import { refuseDesignation, tidyDesignation } from "./refuse";
import { baSize, type InchSeries, largestBaNumber, metricPitches, threadsPerInch } from "./thread-table";

/** A screw thread. All lengths in metres. */
export interface Thread {
  readonly kind: "thread";
  /** Thread form: metric and unified 60°, Whitworth 55°, BA 47½°. Threads of different systems never go together. */
  readonly system: "metric" | "unified" | "whitworth" | "BA";
  readonly series: "M" | InchSeries | "BA";
  /** As it stands in the canonical text: "10", "3/8", "#10", "2". */
  readonly size: string;
  /** Nominal (major) diameter, m. */
  readonly majorDiameter: number;
  /** Axial advance per turn, m. */
  readonly pitch: number;
  readonly hand: "right" | "left";
  /** One text per thread: "M10x1.25", "3/8-24 UNF", "1/4-26 BSF", "2 BA", a left-hand one with " LH". */
  readonly canonical: string;
}

const examples = ["M10x1.25", "3/8-24 UNF", "1/4 BSF", "2 BA"];
const systems = { UNC: "unified", UNF: "unified", BSW: "whitworth", BSF: "whitworth" } as const;
const inchSeries = Object.keys(threadsPerInch) as readonly InchSeries[];

/**
 * Reads a thread: metric with or without pitch (without, the coarse one), unified and British inch threads by size
 * and series with or without the threads per inch, BA by number; `LH` for left hand.
 *
 * Refuses a pitch the standard does not give that diameter, and an inch size without its series: 1/4-20 is both
 * UNC and BSW, which do not go together.
 * @throws NotationError
 * @example parseThread("M8").canonical // => "M8x1.25"
 */
export function parseThread(entered: string): Thread {
  const text = tidyDesignation(entered, examples);
  const [, body = text, left] = /^(.*?)[ -]*\b(LH|left(?:[ -]hand)?)?$/i.exec(text) ?? [];
  const found = readMetric(entered, body) ?? readBa(entered, body) ?? readInch(entered, body);
  if (found === undefined) return refuseDesignation(entered, "this is no thread", examples);
  const thread = { kind: "thread", ...found, hand: left === undefined ? "right" : "left" } as const;
  return { ...thread, canonical: printThread(thread) };
}

/** The one text of a thread; reading it gives the thread back. */
export function printThread({ series, size, pitch, hand }: Omit<Thread, "canonical">): string {
  return `${bareText(series, size, pitch)}${hand === "left" ? " LH" : ""}`;
}

function bareText(series: Thread["series"], size: string, pitch: number): string {
  if (series === "M") return `M${size}x${round(pitch * 1000)}`;
  if (series === "BA") return `${size} BA`;
  return `${size}-${round(0.0254 / pitch)} ${series}`;
}

/** Takes the conversion's last bit off. */
function round(value: number): number {
  return Number(value.toPrecision(9));
}

type Found = Pick<Thread, "system" | "series" | "size" | "majorDiameter" | "pitch">;

function readMetric(entered: string, text: string): Found | undefined {
  const [, size, stated] = /^M ?(\d+(?:\.\d+)?)(?: ?[x/-] ?(\d*\.?\d+))?$/i.exec(text) ?? [];
  if (size === undefined) return undefined;
  const diameter = Number(size);
  const pitches = metricPitches.get(diameter);
  if (pitches === undefined)
    return refuseDesignation(entered, `ISO 261 has no M${diameter}`, nearMetric(diameter));
  const known = [...(pitches.coarse === undefined ? [] : [pitches.coarse]), ...pitches.fine];
  const pitch = stated === undefined ? pitches.coarse : Number(stated);
  const spelt = known.map((each) => `M${diameter}x${each}`);
  if (pitch === undefined)
    return refuseDesignation(entered, `M${diameter} has no coarse pitch, so the pitch must be stated`, spelt);
  if (!known.includes(pitch))
    refuseDesignation(entered, `ISO 261 gives M${diameter} no pitch of ${pitch} mm`, spelt);
  const sizes = { majorDiameter: diameter / 1000, pitch: pitch / 1000 };
  return { system: "metric", series: "M", size: String(diameter), ...sizes };
}

function nearMetric(diameter: number): readonly string[] {
  const sizes = [...metricPitches.keys()].sort((a, b) => Math.abs(a - diameter) - Math.abs(b - diameter));
  return sizes.slice(0, 2).map((size) => `M${size}`);
}

function readBa(entered: string, text: string): Found | undefined {
  const [, before, after] = /^(?:(?:no\.? ?)?(\d+) ?BA|BA ?(?:no\.? ?)?(\d+))$/i.exec(text) ?? [];
  const number = before ?? after;
  if (number === undefined) return undefined;
  const n = Number(number);
  if (n > largestBaNumber)
    refuseDesignation(entered, `BA threads are read from 0 to ${largestBaNumber}`, ["2 BA"]);
  const { diameter, pitch } = baSize(n);
  return { system: "BA", series: "BA", size: String(n), majorDiameter: diameter / 1000, pitch: pitch / 1000 };
}

const inchPattern =
  /^(#|no\.? ?)?((?:\d+[ -])?\d+\/\d+|\d+)(?: ?in)?(?: ?[-x] ?(\d+) ?(?:tpi)?)?(?: ?-? ?(UNC|UNF|BSW|BSF|Whit(?:worth)?))?(?: (\d+) ?tpi)?$/i;

function readInch(entered: string, text: string): Found | undefined {
  const [all, number, written = "", tpiInside, seriesText, tpiAfter] = inchPattern.exec(text) ?? [];
  if (all === undefined) return undefined;
  const tpiText = tpiInside ?? tpiAfter;
  const series = seriesOf(seriesText);
  const size = sizeOf(
    written,
    number !== undefined || (series?.startsWith("UN") === true && Number(written) >= 2),
  );
  if (series === undefined) return refuseSeries(entered, size, tpiText);
  const tpi = threadsPerInch[series][size];
  if (tpi === undefined) {
    return refuseDesignation(entered, `${series} has no size ${size}`, nearInch(series, inches(size)));
  }
  if (tpiText !== undefined && Number(tpiText) !== tpi) {
    refuseDesignation(entered, `${size} ${series} has ${tpi} threads per inch, not ${tpiText}`, [
      `${size}-${tpi} ${series}`,
      ...bySize(size, Number(tpiText)),
    ]);
  }
  return {
    system: systems[series],
    series,
    size,
    majorDiameter: metres(inches(size)),
    pitch: metres(1 / tpi),
  };
}

function seriesOf(text: string | undefined): InchSeries | undefined {
  if (text === undefined) return undefined;
  return /^whit/i.test(text) ? "BSW" : inchSeries.find((series) => series === text.toUpperCase());
}

/** "1-1/8" and "1 1/8" are one size; a numbered one is "#10". */
function sizeOf(written: string, numbered: boolean): string {
  return numbered && /^\d+$/.test(written) ? `#${Number(written)}` : written.replace("-", " ");
}

/** "1 1/8" → 1.125; "#10" → 0.19. */
function inches(size: string): number {
  if (size.startsWith("#")) return (60 + 13 * Number(size.slice(1))) / 1000;
  return size.split(" ").reduce((sum, part) => {
    const [top = "", bottom = "1"] = part.split("/");
    return sum + Number(top) / Number(bottom);
  }, 0);
}

function nearInch(series: InchSeries, diameter: number): readonly string[] {
  const away = (size: string) => Math.abs(inches(size) - Math.min(diameter, 100));
  const sizes = Object.keys(threadsPerInch[series]).sort((a, b) => away(a) - away(b));
  return sizes.slice(0, 2).map((size) => `${size} ${series}`);
}

/** Exactly 25.4 mm to the inch; multiplied first, so that 3/8 in is 9.525 mm to the last bit. */
function metres(inch: number): number {
  return (inch * 254) / 10_000;
}

function bySize(size: string, tpi: number): readonly string[] {
  return inchSeries
    .filter((series) => threadsPerInch[series][size] === tpi)
    .map((series) => `${size}-${tpi} ${series}`);
}

function refuseSeries(entered: string, size: string, tpiText: string | undefined): never {
  const known = inchSeries.filter((series) => threadsPerInch[series][size] !== undefined);
  const matching = tpiText === undefined ? [] : bySize(size, Number(tpiText));
  const understood = matching.length > 0 ? matching : known.map((series) => `${size} ${series}`);
  const problem =
    "the series is missing (UNC, UNF, BSW or BSF): sizes and even pitches are alike where the threads are not";
  return refuseDesignation(entered, problem, understood.length > 0 ? understood : examples);
}
