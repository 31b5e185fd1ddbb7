import { printQuantity, printToe } from "@trunnion/calc";

/** What the record gives for a figure, for the line below its field. */
export function sayGiven(from: string | undefined): string {
  return from === undefined ? "Not on the record." : `Left empty: ${from}, from the record.`;
}

/** A computed angle, to a hundredth of a degree. */
export const sayAngle = (si: number): string =>
  printQuantity(si, { dimension: "angle", unit: "°", decimals: 2 });

/** A wheel's toe, to a tenth of a minute. */
export const sayToe = (si: number): string =>
  printToe(si, { share: "perSide", unit: "'", resolution: Math.PI / 180 / 600 });

/** How far an angle moved, in minutes of arc with its sign; less than half a minute is nothing. */
export function sayMove(si: number): string {
  const minutes = Math.round((si * 180 * 60) / Math.PI);
  return minutes === 0 ? "±0'" : `${minutes > 0 ? "+" : "−"}${Math.abs(minutes)}'`;
}

/** A length in millimetres with its sign. */
export const sayShift = (si: number): string => {
  const mm = (si * 1000).toFixed(1);
  return `${si > 0.00005 ? "+" : ""}${mm} mm`;
};
