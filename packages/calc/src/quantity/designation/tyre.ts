import { refuseDesignation, tidyDesignation } from "./refuse";

/** A tyre by what is moulded on its side. Lengths in metres. */
export interface Tyre {
  readonly kind: "tyre";
  /** Section width stated in millimetres or in inches. */
  readonly system: "metric" | "imperial";
  readonly construction: "radial" | "crossPly";
  /** Nominal section width, m. */
  readonly sectionWidth: number;
  /** Section height over width as stated, e.g. 0.7; `null` when the size states none. */
  readonly aspect: number | null;
  /** Nominal rim diameter, m; inch sizes are exactly 25.4 mm per inch. */
  readonly rimDiameter: number;
  /** Speed symbol, from inside the size (165 SR 13) or behind it (82T); `null` when none is stated. */
  readonly speedSymbol: string | null;
  /** `null` when none is stated. */
  readonly loadIndex: number | null;
  /** `null` when none is stated. */
  readonly plyRating: number | null;
  /** One text per tyre: "175/70 R 13 82T", "165 SR 13", "5.20-13". */
  readonly canonical: string;
}

const examples = ["175/70 R 13 82T", "165 SR 13", "5.20-13"];
const structure = "(?: ?(R|D)| ?-| ?X|(?<=[SHV]) ) ?";
const behind = "(?: \\(?(\\d{2,3}) ?([J-NP-UHVWY])\\)?)?(?: (\\d{1,2}) ?PR)?";
const metric = new RegExp(`^(\\d{3})(?: ?/ ?(\\d{2,3}))? ?([SHVTZ])?${structure}(\\d{1,3})${behind}$`);
const imperial = new RegExp(`^(\\d{1,2}\\.\\d{1,2})() ?([SHV])?${structure}(\\d{1,2})${behind}$`);

/**
 * Reads a tyre size: metric with or without the aspect ratio, speed letter inside or service description behind;
 * imperial cross-ply or radial. A dash means cross-ply (diagonal), as the moulding does; so does D, and × between
 * inch figures.
 *
 * Refuses widths that are no multiple of 5 mm, aspect ratios outside 25 to 95, rims outside 8 to 24 in (or 315 to
 * 420 mm for the metric rims of the 1970s), and two speed symbols that differ.
 * @throws NotationError
 * @example parseTyre("175/70r13").canonical // => "175/70 R 13"
 */
export function parseTyre(entered: string): Tyre {
  const text = tidyDesignation(entered, examples).toUpperCase();
  const system = metric.test(text) ? "metric" : "imperial";
  const parts = (system === "metric" ? metric : imperial).exec(text);
  if (parts === null || (system === "metric" && /\dX/.test(text.replaceAll(" ", ""))))
    return refuseTyre(entered, text);
  const [, width = "", aspect = "", letter, radial, rim = "", load, symbol, ply] = parts;
  if (letter !== undefined && symbol !== undefined && letter !== symbol && letter !== "Z") {
    refuseDesignation(entered, `the speed symbols ${letter} and ${symbol} differ`, examples);
  }
  const tyre = {
    kind: "tyre",
    system,
    construction: radial === "R" ? "radial" : "crossPly",
    sectionWidth: system === "metric" ? metricWidth(entered, width) : imperialWidth(entered, width),
    aspect: aspect === "" ? null : aspectRatio(entered, Number(aspect)),
    rimDiameter: rimDiameter(entered, Number(rim)),
    speedSymbol: symbol ?? letter ?? null,
    loadIndex: load === undefined ? null : Number(load),
    plyRating: ply === undefined ? null : Number(ply),
  } as const;
  return { ...tyre, canonical: printTyre(tyre) };
}

/** The one text of a tyre; reading it gives the tyre back. A service description replaces the letter inside. */
export function printTyre(tyre: Omit<Tyre, "canonical">): string {
  const { sectionWidth, aspect, speedSymbol, loadIndex, plyRating } = tyre;
  const width = tyre.system === "metric" ? millimetres(sectionWidth) : (sectionWidth / 0.0254).toFixed(2);
  const ratio = aspect === null ? "" : `/${Math.round(aspect * 100)}`;
  const letter = loadIndex === null ? (speedSymbol ?? "") : "";
  const shape = tyre.construction === "radial" ? ` ${letter}R ` : letter === "" ? "-" : ` ${letter}-`;
  const service = loadIndex === null ? "" : ` ${loadIndex}${speedSymbol ?? ""}`;
  const ply = plyRating === null ? "" : ` ${plyRating}PR`;
  return `${width}${ratio}${shape}${rimText(tyre.rimDiameter)}${service}${ply}`;
}

function rimText(diameter: number): number {
  const inches = diameter / 0.0254;
  return Math.abs(inches - Math.round(inches)) < 1e-6 ? Math.round(inches) : millimetres(diameter);
}

function millimetres(length: number): number {
  return Math.round(length * 1000);
}

function metricWidth(entered: string, text: string): number {
  const width = Number(text);
  if (width >= 105 && width <= 355 && width % 5 === 0) return width / 1000;
  const inches = `${text.slice(0, 1)}.${text.slice(1)}-13`;
  const understood = width > 355 ? [inches] : examples;
  return refuseDesignation(
    entered,
    `a width of ${width} mm is not made: 105 to 355 in steps of 5`,
    understood,
  );
}

function imperialWidth(entered: string, text: string): number {
  const width = Number(text);
  if (width >= 3 && width <= 15) return (width * 254) / 10_000;
  return refuseDesignation(entered, `a width of ${width} in is not made: 3.00 to 15.00`, [
    "5.20-13",
    "5.60-15",
  ]);
}

function aspectRatio(entered: string, percent: number): number {
  if (percent >= 25 && percent <= 95) return percent / 100;
  return refuseDesignation(entered, `an aspect ratio of ${percent} is not made: 25 to 95`, examples);
}

function rimDiameter(entered: string, rim: number): number {
  if (rim >= 8 && rim <= 24) return (rim * 254) / 10_000;
  if (rim >= 315 && rim <= 420) return rim / 1000;
  return refuseDesignation(
    entered,
    `a rim of ${rim} is not made: 8 to 24 (inches) or 315 to 420 (mm)`,
    examples,
  );
}

function refuseTyre(entered: string, text: string): never {
  const [, width, rim] = /^(\d{3}(?:\/\d{2})?) ?X? ?(\d{2})$/.exec(text) ?? [];
  if (width === undefined) return refuseDesignation(entered, "this is no tyre size", examples);
  const problem = "the size does not say whether the tyre is radial (R) or cross-ply (-)";
  return refuseDesignation(entered, problem, [`${width} R ${rim}`, `${width}-${rim}`]);
}
