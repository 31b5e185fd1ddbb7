import type { Vector } from "../alignment/vector";
import type { MutableVector } from "./vector";

/** A moving part that springs, dampers and drop links hang on. */
export interface Body {
  /** What is to be kept of a point that lies at `design` in the design position, to find it again later. */
  attach(design: Vector): Vector;
  /** Puts into `out` where an attached point is now. */
  locate(out: MutableVector, attached: Vector): void;
  /** Puts into `out` the velocity, per metre of wheel-centre rise with the rack held, of the part at `point` now. */
  velocity(out: MutableVector, point: Vector): void;
}
