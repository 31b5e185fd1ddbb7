import { nutMinorDiameter, pitchDiameter, type ThreadForm } from "./thread-form";

/** The sizes at which a bolt and its nut grip each other least. Lengths m. */
export interface ThreadLimits {
  readonly boltMajorLeast: number;
  readonly boltPitchLeast: number;
  readonly nutMinorGreatest: number;
  readonly nutPitchGreatest: number;
  /** The classes, e.g. "6g/6H". */
  readonly fit: string;
}

/**
 * Limits of the ordinary fit, from the formulas of the standards (from memory): ISO 965-1 6g/6H, unrounded and for the
 * nominal diameter itself; ASME B1.1 2A/2B with the diameter as length of engagement. Within a few micrometres of the
 * tables. `undefined` for Whitworth and BA threads, whose fits are not known here.
 */
export function ordinaryFit(thread: ThreadForm): ThreadLimits | undefined {
  if (thread.system === "metric") return metricFit(thread);
  return thread.system === "unified" ? unifiedFit(thread) : undefined;
}

function metricFit(thread: ThreadForm): ThreadLimits {
  const [d, p] = [thread.majorDiameter * 1000, thread.pitch * 1000];
  const pitchTolerance = 90 * p ** 0.4 * d ** 0.1;
  const allowance = 15 + 11 * p;
  const majorTolerance = 180 * p ** (2 / 3) - 3.15 / Math.sqrt(p);
  const minorTolerance = p >= 1 ? 230 * p ** 0.7 : 433 * p - 190 * p ** 1.22;
  const micrometres = 1e-6;
  return {
    boltMajorLeast: thread.majorDiameter - (allowance + majorTolerance) * micrometres,
    boltPitchLeast: pitchDiameter(thread) - (allowance + pitchTolerance) * micrometres,
    nutMinorGreatest: nutMinorDiameter(thread) + minorTolerance * micrometres,
    nutPitchGreatest: pitchDiameter(thread) + 1.32 * pitchTolerance * micrometres,
    fit: "6g/6H",
  };
}

function unifiedFit(thread: ThreadForm): ThreadLimits {
  const inch = 0.0254;
  const [d, p] = [thread.majorDiameter / inch, thread.pitch / inch];
  const pitchTolerance = 0.0015 * Math.cbrt(d) + 0.0015 * Math.sqrt(d) + 0.015 * p ** (2 / 3);
  const allowance = 0.3 * pitchTolerance;
  return {
    boltMajorLeast: thread.majorDiameter - (allowance + 0.06 * p ** (2 / 3)) * inch,
    boltPitchLeast: pitchDiameter(thread) - (allowance + pitchTolerance) * inch,
    nutMinorGreatest: nutMinorDiameter(thread) + (0.25 * p - 0.4 * p * p) * inch,
    nutPitchGreatest: pitchDiameter(thread) + 1.3 * pitchTolerance * inch,
    fit: "2A/2B",
  };
}
