import { notNegative, positive } from "../spring/guard";

/** A type-approval stop for passenger cars (M1): distance = delay × v + v²/(2 × deceleration). */
export interface BrakeTest {
  readonly title: string;
  /** s. */
  readonly delay: number;
  /** m per (km/h)², as printed. */
  readonly squareTerm: number;
}

/** Delay of 0.1 m per km/h, which all of the tests have: 0.36 s. */
const delay = 0.36;

/**
 * The stopping-distance formulas of the UN regulations for passenger cars, with v in km/h: 0.1·v + c·v².
 * R13 Annex 4 secondary braking was read, the others are from memory.
 */
export const brakeTests = {
  "R13-H": { title: "UN R13-H Annex 3, engine disconnected: 0.1 v + 0.0060 v²", delay, squareTerm: 0.006 },
  "R13-H engine": {
    title: "UN R13-H Annex 3, engine connected: 0.1 v + 0.0067 v²",
    delay,
    squareTerm: 0.0067,
  },
  R13: { title: "UN R13 Annex 4, M1 service brake: 0.1 v + v²/150", delay, squareTerm: 1 / 150 },
  "R13 secondary": { title: "UN R13 Annex 4, M1 secondary: 0.1 v + 2 v²/150", delay, squareTerm: 2 / 150 },
} as const satisfies Readonly<Record<string, BrakeTest>>;

/** Longest stopping distance the test allows from that speed (m/s), m. */
export function regulationDistance({ delay: seconds, squareTerm }: BrakeTest, speed: number): number {
  const kmh = notNegative(speed, "speed") * 3.6;
  return seconds * speed + squareTerm * kmh * kmh;
}

/** The deceleration in the square term, m/s²: 1/(25.92·c). */
export function regulationDeceleration({ squareTerm }: BrakeTest): number {
  return 1 / (2 * 3.6 ** 2 * positive(squareTerm, "squareTerm"));
}

/**
 * Least deceleration, g, that the braking of a car must reach where the adhesion is k, between 0.2 and 0.8:
 * z ≥ 0.1 + 0.7·(k − 0.2) (UN R13-H Annex 5, 3.1, from memory).
 */
export function leastDecelerationAtAdhesion(adhesion: number): number {
  return 0.1 + 0.7 * (positive(adhesion, "adhesion") - 0.2);
}
