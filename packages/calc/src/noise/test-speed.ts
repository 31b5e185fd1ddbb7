import { positive } from "../spring/guard";

const revPerMinute = Math.PI / 30;

/**
 * Engine speed of the stationary exhaust test, rad/s, from the rated speed (of greatest power), rad/s: three quarters
 * of it up to 5000 rev/min, 3750 between, half of it from 7500 (ISO 5130:2007 and UN R51 Annex 3, from memory). National motor-sport rules
 * take two thirds or three quarters of the maximum instead.
 */
export function stationaryTestSpeed(ratedSpeed: number): number {
  const rated = positive(ratedSpeed, "ratedSpeed") / revPerMinute;
  return Math.min(0.75 * rated, Math.max(3750, 0.5 * rated)) * revPerMinute;
}
