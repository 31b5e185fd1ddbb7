import { CalcRefusal } from "../catalogue/refusal";
import { notNegative, written } from "../spring/guard";

/**
 * Greatest speed of each symbol, km/h (UN R30 2.29, read as reproduced for N to Y; J to M from memory). Not in the
 * order of the alphabet: H is above U.
 */
const symbolSpeeds = {
  J: 100,
  K: 110,
  L: 120,
  M: 130,
  N: 140,
  P: 150,
  Q: 160,
  R: 170,
  S: 180,
  T: 190,
  U: 200,
  H: 210,
  V: 240,
  W: 270,
  Y: 300,
} as const;

export type SpeedSymbol = keyof typeof symbolSpeeds;
/** All speed symbols, slowest first. */
export const speedSymbols = Object.keys(symbolSpeeds) as readonly SpeedSymbol[];

/** Whether a text is a speed symbol that {@link speedOfSymbol} knows. */
export function isSpeedSymbol(text: string): text is SpeedSymbol {
  return Object.hasOwn(symbolSpeeds, text);
}

/** Greatest speed of a speed symbol, m/s. @example speedOfSymbol("H") * 3.6 // => 210 */
export function speedOfSymbol(symbol: SpeedSymbol): number {
  return symbolSpeeds[symbol] / 3.6;
}

/** Whether a speed, m/s, is beyond a symbol; the last bits of a conversion from mph or km/h are not an excess. */
export function tooFastFor(symbol: SpeedSymbol, speed: number): boolean {
  return notNegative(speed, "speed") > speedOfSymbol(symbol) * (1 + 1e-12);
}

/** From which speed, km/h, a symbol's load falls, and to which share of it at the symbol's own speed. */
const derating: Partial<Record<SpeedSymbol, { readonly from: number; readonly share: number }>> = {
  V: { from: 210, share: 0.91 },
  W: { from: 240, share: 0.85 },
  Y: { from: 270, share: 0.85 },
};

/**
 * Share of the load index that a tyre may carry at a speed, m/s: 1 up to its symbol, except that V falls in a straight
 * line from 210 km/h to 91 % at 240, W from 240 to 85 % at 270 (UN R30, load against speed; textbook summary) and Y
 * from 270 to 85 % at 300 (from memory).
 *
 * @throws CalcRefusal (`TOO_FAST_FOR_TYRE`) above the symbol's speed
 */
export function loadShareAtSpeed(symbol: SpeedSymbol, speed: number): number {
  const limit = speedOfSymbol(symbol);
  if (tooFastFor(symbol, speed))
    throw new CalcRefusal(
      "TOO_FAST_FOR_TYRE",
      `symbol ${symbol} ends at ${written(limit, "speed")}, but ${written(speed, "speed")} is wanted`,
      "speed",
    );
  const falls = derating[symbol];
  if (falls === undefined) return 1;
  const from = falls.from / 3.6;
  return 1 - (1 - falls.share) * Math.min(1, Math.max(0, (speed - from) / (limit - from)));
}
