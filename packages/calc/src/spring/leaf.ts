import { CalcRefusal } from "../catalogue/refusal";
import { notNegative, positive, wholeNumber, written } from "./guard";

/** A semi-elliptic leaf spring of equal leaves, metres, Pa. */
export interface LeafSpring {
  /** Eye to centre bolt at the front, along the chord. */
  readonly frontLength: number;
  /** Centre bolt to eye at the rear; equal to the front of a symmetrical spring. */
  readonly rearLength: number;
  /** Length held rigid by the axle's seat and U-bolts; 0 for a spring gripped at its centre bolt only. */
  readonly clampLength: number;
  readonly width: number;
  readonly thickness: number;
  /** Leaves that run the full length, the master leaf with its graduated ones not counted. */
  readonly fullLeaves: number;
  /** Graduated leaves, the master leaf included. */
  readonly graduatedLeaves: number;
  readonly young: number;
}

/** Rate of one half as a cantilever, N/m: E·b·t³(3n_f + 2n_g)/(12 l³). */
function cantileverRate(leaf: LeafSpring, length: number): number {
  return (leaf.young * leaf.width * leaf.thickness ** 3 * leafSum(leaf)) / (12 * length ** 3);
}

function leafSum({ fullLeaves, graduatedLeaves }: LeafSpring): number {
  const sum = 3 * wholeNumber(fullLeaves, "fullLeaves") + 2 * wholeNumber(graduatedLeaves, "graduatedLeaves");
  if (sum > 0) return sum;
  throw new CalcRefusal("NO_LEAF", "a leaf spring needs at least one leaf, but has none", "graduatedLeaves");
}

/** Free lengths of both halves once the clamp has taken half its length from each. */
function freeHalves(leaf: LeafSpring): { front: number; rear: number } {
  for (const place of ["frontLength", "rearLength", "width", "thickness"] as const)
    positive(leaf[place], place);
  positive(leaf.young, "youngModulus");
  const half = notNegative(leaf.clampLength, "clampLength") / 2;
  const shorter = Math.min(leaf.frontLength, leaf.rearLength);
  if (half < shorter) return { front: leaf.frontLength - half, rear: leaf.rearLength - half };
  throw new CalcRefusal(
    "CLAMP_TOO_LONG",
    `half the clamp, ${written(half, "length")}, must be shorter than the shorter half of the spring, ${written(shorter, "length")}`,
    "clampLength",
  );
}

/**
 * Rate at the axle seat, N/m, of a leaf spring on two eyes whose axle may tilt with it: L²/(b²/k_a + a²/k_b) with
 * each half a cantilever of graduated (uniform strength) and full-length leaves in parallel. Symmetrical, it is
 * 8·E·n·b·t³/(3L³) for graduated leaves alone and 4·E·n·b·t³/L³ for full-length ones (machine-design handbooks;
 * SAE Spring Design Manual, from memory). Friction between leaves, camber and shackle angle left out.
 *
 * @throws CalcRefusal for lengths that are not positive, no leaf, or a clamp as long as the spring
 */
export function leafRate(leaf: LeafSpring): number {
  const { front, rear } = freeHalves(leaf);
  const span = front + rear;
  return span ** 2 / (rear ** 2 / cantileverRate(leaf, front) + front ** 2 / cantileverRate(leaf, rear));
}

/** Greatest bending stress at the clamp, Pa, in each kind of leaf; 0 where there is none of that kind. */
export interface LeafStress {
  readonly full: number;
  readonly graduated: number;
}

/**
 * Bending stress of the leaves at the clamp under a load, N, at the seat: full-length 18·P·l/(b·t²(3n_f + 2n_g)),
 * graduated 12·P·l/(b·t²(3n_f + 2n_g)), with P·l the moment of either half. Leaves without preset against each other.
 */
export function leafStress(leaf: LeafSpring, load: number): LeafStress {
  const { front, rear } = freeHalves(leaf);
  const moment = (notNegative(load, "load") * front * rear) / (front + rear);
  const unit = moment / (leaf.width * leaf.thickness ** 2 * leafSum(leaf));
  return { full: leaf.fullLeaves > 0 ? 18 * unit : 0, graduated: leaf.graduatedLeaves > 0 ? 12 * unit : 0 };
}
