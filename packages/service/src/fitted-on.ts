import { earliestDay, sayDay } from "@trunnion/register";

/** ISO days. */
interface FittedColumns {
  readonly fittedText: string | null;
  readonly fittedEarliest: string | null;
  readonly fittedLatest: string | null;
  readonly recordedOn: string;
}

/** When a modification was fitted, as the engines reckon with it and as pages say it. */
export interface FittedOn {
  /** ISO day, the latest it may have been. */
  readonly on: string;
  readonly earliest?: string;
  readonly said?: string;
}

/**
 * When a modification was fitted. Of one without a date nothing is known but that it was there when it was recorded:
 * "by 25 Nov 2026", at any time before.
 */
export function fittedOn({ fittedText, fittedEarliest, fittedLatest, recordedOn }: FittedColumns): FittedOn {
  if (fittedLatest === null)
    return { on: recordedOn, earliest: earliestDay, said: `by ${sayDay(recordedOn)}` };
  const [on, earliest] = [fittedLatest, fittedEarliest ?? fittedLatest];
  if (earliest === on) return { on };
  return { on, earliest, ...(fittedText === null ? {} : { said: fittedText }) };
}
