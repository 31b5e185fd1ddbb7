import type { Vector } from "../alignment/vector";
import type { Body } from "./body";
import type { HomogeneousPoint } from "./front-view";
import type { Reach } from "./reach";
import type { MutableVector } from "./vector";
import type { Wheel } from "./wheel";

/** A steering axis as it stands now. */
export interface SteeringAxis {
  readonly lower: Vector;
  readonly upper: Vector;
}

/**
 * One wheel and the linkage that carries it, ready to be moved. `moveTo` puts it to a position; everything else then
 * speaks of that position until the next move. Read it with `readCorner`. `Joint` names its moving points.
 */
export interface Corner<Joint extends string = string> {
  readonly wheel: Wheel;
  /** Rise of the wheel centre from the design position, metres. */
  readonly bump: number;
  /** Shift of the tie rod's inner end along +y, metres. */
  readonly rack: number;
  /** `null` where the linkage does not steer. */
  readonly steeringAxis: SteeringAxis | null;
  /** False where a rack has nothing to move. */
  readonly steered: boolean;
  /** The part that carries the wheel. */
  readonly upright: Body;
  /** Spring, damper and bar as hung on this corner. */
  readonly mounts: HungMounts;
  /**
   * Rise of the wheel centre and shift of the rack, metres from the design position. After a refusal the corner stands
   * somewhere it does reach, and can be moved on from there.
   * @throws CalcRefusal where the linkage cannot reach, saying what travel it reaches
   * @throws RangeError if a figure is not finite, or the rack is moved where there is none
   */
  moveTo(bump: number, rack?: number): void;
  /** Travel that can be reached with the rack at `rack`; `null` if not even the design height can. Moves the corner. */
  reach(rack?: number): Reach | null;
  /** Turn of the upright per metre of wheel-centre rise, rack held, rad/m. */
  readonly bumpTurn: Vector;
  /** Turn of the upright per metre of rack, wheel centre's height held, rad/m. */
  readonly rackTurn: Vector;
  /** Puts into `out` the wheel centre's velocity per metre of rise. */
  centreVelocity(out: MutableVector): void;
  /** Front-view instant centre in the transverse plane through the present wheel centre. */
  instantCentre(): HomogeneousPoint;
  /** The moving joints as they stand now, by name; for drawing and checking. */
  joints(): Readonly<Record<Joint, Vector>>;
}

/** What a hung spring or damper answers at the present position. */
export interface HungStrut {
  readonly length: number;
  /** Shortening per metre of wheel-centre rise. */
  readonly ratio: number;
}

/** What a hung bar answers at the present position. */
export interface HungBar {
  /** Movement of the arm's end per metre of wheel-centre rise, unsigned. */
  readonly ratio: number;
  /** Turn of the arm from the design position, rad, right-handed about the axis as given. */
  readonly angle: number;
}

/** Reads what hangs on a corner; each is `null` where nothing hangs. */
export interface HungMounts {
  spring(): HungStrut | null;
  damper(): HungStrut | null;
  bar(): HungBar | null;
}
