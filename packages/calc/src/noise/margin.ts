import { coverageFactor, rectangularUncertainty } from "../measurement/uncertainty";
import { type Verdict, verdict } from "../measurement/verdict";
import { finite, notNegative } from "../spring/guard";

/** What is known about how well a level was measured, dB. */
export interface LevelUncertaintyInput {
  /** Limits ± within which the meter is known to be right (certificate, or its class's tolerance). */
  readonly meterAccuracy?: number | undefined;
  /** Standard uncertainty of everything else: place and angle of the microphone, wind, engine speed, repetition. */
  readonly otherUncertainty?: number | undefined;
}

/**
 * Expanded uncertainty of a level (k = 2), dB: 2·√(a²/3 + u²), the meter's ±a taken as rectangular (GUM 4.3.7).
 * `null` when the meter's accuracy is not known: then nothing can be proven.
 */
export function levelUncertainty({
  meterAccuracy,
  otherUncertainty = 0,
}: LevelUncertaintyInput): number | null {
  const other = notNegative(otherUncertainty, "otherUncertainty");
  if (meterAccuracy === undefined) return null;
  const meter = rectangularUncertainty(notNegative(meterAccuracy, "meterAccuracy"));
  return coverageFactor * Math.hypot(meter, other);
}

/** A level against its limit. */
export interface LevelVerdictInput {
  /** dB */
  readonly level: number;
  /** Highest level allowed, itself included, dB. */
  readonly limit: number;
  /** k = 2, dB; `null` when not known. */
  readonly expandedUncertainty: number | null;
}

/**
 * ISO 14253-1 with the one upper limit: inside when level + U ≤ limit, outside when level − U > limit, else nobody can
 * tell; nor when the uncertainty is not known.
 */
export function judgeLevel({ level, limit, expandedUncertainty }: LevelVerdictInput): Verdict {
  const [value, upper] = [finite(level, "level"), finite(limit, "limit")];
  return expandedUncertainty === null
    ? "cannotTell"
    : verdict({ value, expandedUncertainty, limits: { upper } });
}
