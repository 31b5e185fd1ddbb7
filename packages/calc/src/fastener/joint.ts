import { CalcRefusal } from "../catalogue/refusal";
import { notNegative, positive } from "../spring/guard";

/** Share of an outer load that a preloaded bolt takes, C = k_b/(k_b + k_m); both rates in N/m (Shigley 8-7). */
export function jointConstant(boltRate: number, memberRate: number): number {
  return positive(boltRate, "boltRate") / (boltRate + positive(memberRate, "memberRate"));
}

/** A bolted joint under an outer load along the bolt. Forces N. */
export interface JointLoad {
  readonly preload: number;
  /** Per bolt, pulling the joint apart. */
  readonly load: number;
  /** {@link jointConstant}. */
  readonly constant: number;
}

/** Forces in a loaded joint, N. */
export interface JointForces {
  /** F_i + C·P while the joint is closed, P once it has opened. */
  readonly bolt: number;
  /** What still presses the parts together; 0 once the joint has opened. */
  readonly clamp: number;
  /** Load at which the parts come apart, F_i/(1 − C). */
  readonly separation: number;
}

/** Forces in a preloaded joint (Shigley 8-7). */
export function jointForces({ preload, load, constant }: JointLoad): JointForces {
  const c = openShare(constant);
  const clamp = Math.max(0, notNegative(preload, "preload") - (1 - c) * notNegative(load, "load"));
  const bolt = clamp > 0 ? preload + c * load : load;
  return { bolt, clamp, separation: preload / (1 - c) };
}

function openShare(constant: number): number {
  if (notNegative(constant, "constant") < 1) return constant;
  throw new CalcRefusal(
    "NOT_A_SHARE",
    `the joint constant must be at least 0 and below 1, but is ${constant}`,
    "constant",
  );
}
