import { type Plan, printQuantity, printToe } from "@trunnion/calc";

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
export function sayShift(si: number): string {
  const mm = Math.abs(si * 1000).toFixed(1);
  return mm === "0.0" ? "±0 mm" : `${si > 0 ? "+" : "−"}${mm} mm`;
}

/** What else a plan moves: the same on the page and in print. Where the linkage has no answer it says so. */
export function sideEffectsOf({
  before,
  after,
}: Pick<Plan, "before" | "after">): readonly { readonly label: string; readonly value: string }[] {
  const moved = (of: "kingpin" | "scrub" | "trail" | "rollCentreHeight", say: (si: number) => string) => {
    const [was, is] = [before[of], after[of]];
    return was === null || is === null ? "no answer" : say(is - was);
  };
  const steered = [
    { label: "Kingpin inclination", value: moved("kingpin", sayMove) },
    { label: "Scrub radius", value: moved("scrub", sayShift) },
    { label: "Trail", value: moved("trail", sayShift) },
  ];
  return [
    ...(before.kingpin === null ? [] : steered),
    { label: "Track, this wheel", value: sayShift(after.trackChange - before.trackChange) },
    { label: "Wheel forwards", value: sayShift(after.forwardShift - before.forwardShift) },
    { label: "Roll-centre height", value: moved("rollCentreHeight", sayShift) },
    {
      label: "Toe change per 10 mm of bump",
      value: `${sayMove(before.toeGain / 100)} before, ${sayMove(after.toeGain / 100)} after`,
    },
  ];
}
