import type { Corner } from "./corner";
import { type CornerReading, readCorner } from "./reading";

/** Positions to read, evenly spread; metres. */
export interface Span {
  readonly from: number;
  readonly to: number;
  /** How many positions, both ends among them: from 2 to 10,001. */
  readonly positions: number;
}

/**
 * Readings over a span of wheel travel with the rack held.
 * @throws CalcRefusal where the linkage does not reach
 */
export function sweepBump(corner: Corner, span: Span, rack = 0): CornerReading[] {
  return spread(span, (bump) => {
    corner.moveTo(bump, rack);
    return readCorner(corner);
  });
}

/**
 * Readings over a span of rack travel with the wheel centre's height held.
 * @throws CalcRefusal where the linkage does not reach
 */
export function sweepRack(corner: Corner, span: Span, bump = 0): CornerReading[] {
  return spread(span, (rack) => {
    corner.moveTo(bump, rack);
    return readCorner(corner);
  });
}

function spread<T>({ from, to, positions }: Span, at: (value: number) => T): T[] {
  if (!(Number.isInteger(positions) && positions >= 2 && positions <= 10_001)) {
    throw new RangeError(`positions must be a whole number from 2 to 10001, but is ${positions}`);
  }
  const step = (to - from) / (positions - 1);
  return Array.from({ length: positions }, (_, index) =>
    at(index === positions - 1 ? to : from + index * step),
  );
}
