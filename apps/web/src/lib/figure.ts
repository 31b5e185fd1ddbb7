/** A figure taken apart for setting: what stands before the decimal point, point and decimals, and the unit. */
export interface FigureParts {
  readonly whole: string;
  readonly fraction: string;
  readonly unit: string;
}

const decimal = /^([+\-−±]?\d[\d\u00A0\u202F,]*)(\.\d+)?(?:(°|:1)|\s+(\D{1,10}))?$/;
/** Notation that has no decimal point to align on (9/16 in, 0°12′): only its unit is set apart. */
const notation = /^([+\-−±]?\d[\d./°′'"″]*)(?:\s+(\D{1,10}))?$/;

/** A nominal with its limits after it: "16 mm (15.5 mm to 16.5 mm)". Undefined for anything else. */
export function nominalAndLimits(
  text: string,
): { readonly nominal: string; readonly limits: string } | undefined {
  const parts = /^([^()]+) \(([^()]+)\)$/.exec(text);
  const [, nominal = "", limits = ""] = parts ?? [];
  return figureParts(nominal) === undefined ? undefined : { nominal, limits };
}

/** Takes a figure of the trade apart; undefined for words and for figures with more in them than one number. */
export function figureParts(text: string): FigureParts | undefined {
  const plain = decimal.exec(text);
  if (plain !== null)
    return { whole: plain[1] ?? "", fraction: plain[2] ?? "", unit: plain[3] ?? plain[4] ?? "" };
  const trade = notation.exec(text);
  if (trade !== null) return { whole: trade[1] ?? "", fraction: "", unit: trade[2] ?? "" };
  return undefined;
}
