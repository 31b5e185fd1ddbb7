import type { Vector } from "../alignment/vector";
import { CalcRefusal } from "../catalogue/refusal";
import type { Arm } from "./arm";
import type { Corner, HungMounts, SteeringAxis } from "./corner";
import type { HomogeneousPoint } from "./front-view";
import type { Steering } from "./hardpoint";
import { type Driven, drive } from "./newton";
import { outOfReach, type Reach, searchReach } from "./reach";
import type { Upright } from "./upright";
import { type MutableVector, mutable } from "./vector";
import type { Wheel } from "./wheel";

const velocity = mutable();
/** Stages in which a position is approached from the design position where it is not reached at one go. */
const stages = 16;
/** Least rise of the wheel centre per radian of the lower arm, m; below it the wheel stands at its end of travel. */
const leastRise = 1e-6;

/**
 * A corner driven by the turn of its lower arm, with an upright held by a tie rod: double wishbone or strut. Held by a
 * toe link instead it is the same linkage, with no rack to move.
 */
export abstract class SteeredCorner implements Corner, Driven {
  angle = 0;
  height: number;
  heightRate = 0;
  bump = 0;
  rack = 0;
  readonly steered: boolean;
  abstract readonly mounts: HungMounts;
  abstract readonly steeringAxis: SteeringAxis | null;
  private riseSign = 0;
  /** False while the parts stand at a position on the way, with twists per radian. */
  private settled = false;

  constructor(
    readonly wheel: Wheel,
    protected readonly lower: Arm,
    readonly upright: Upright,
    { steers = true }: Steering,
  ) {
    this.steered = steers;
    this.height = wheel.centre.z;
  }

  get bumpTurn(): Vector {
    return this.upright.bumpTwist.turn;
  }

  get rackTurn(): Vector {
    return this.upright.rackTwist.turn;
  }

  abstract instantCentre(): HomogeneousPoint;
  abstract joints(): Readonly<Record<string, Vector>>;
  /** Puts the upright where the lower arm, turned already, carries it; false where it does not reach. */
  protected abstract carry(): boolean;
  /** Sets the upright's twists; `lowerVelocity` is the lower joint's per radian. False at a dead centre. */
  protected abstract differentiate(lowerVelocity: Vector): boolean;

  place(angle: number): boolean {
    this.settled = false;
    this.lower.turnTo(angle);
    if (!this.carry()) return false;
    this.lower.sweep(velocity);
    if (!this.differentiate(velocity)) return false;
    this.upright.pose.place(this.wheel.centre, this.wheel.designCentre);
    this.upright.bumpTwist.velocity(velocity, this.wheel.centre);
    if (this.riseSign === 0) this.riseSign = Math.sign(velocity.z);
    // Beyond the end of its travel the wheel comes back on the other side of the dead centre: not the same linkage.
    if (!(velocity.z * this.riseSign > leastRise)) return false;
    this.angle = angle;
    this.height = this.wheel.centre.z;
    this.heightRate = velocity.z;
    return true;
  }

  moveTo(bump: number, rack = 0): void {
    if (!Number.isFinite(bump) || !Number.isFinite(rack)) {
      throw new RangeError(`travel and rack must be finite numbers of metres, but are ${bump} and ${rack}`);
    }
    if (rack !== 0 && !this.steered)
      throw new RangeError(`this linkage does not steer, so the rack cannot be at ${rack} m`);
    if (this.solve(bump, rack) || this.approach(bump, rack)) return;
    throw outOfReach({ bump, rack }, this.reach(rack));
  }

  reach(rack = 0): Reach | null {
    const reach = searchReach((travel) => (travel === 0 ? this.approach(0, rack) : this.solve(travel, rack)));
    this.approach(0, 0);
    return reach;
  }

  centreVelocity(out: MutableVector): void {
    this.upright.bumpTwist.velocity(out, this.wheel.centre);
  }

  /** Brings the linkage to its design position, or says that it cannot be put together. */
  protected begin(): void {
    if (this.place(0) && this.solve(0, 0)) return;
    throw new CalcRefusal(
      "CANNOT_ASSEMBLE",
      "these hardpoints, adjusted so, do not reach the wheel centre's design height",
    );
  }

  /** From where it stands. */
  private solve(bump: number, rack: number): boolean {
    if (rack !== this.rack || !this.settled) {
      this.rack = rack;
      this.upright.shiftRack(rack);
      if (!this.place(this.angle)) return false;
    }
    if (!drive(this, this.wheel.designCentre.z + bump)) return false;
    this.bump = bump;
    if (!this.settled) this.finish();
    return true;
  }

  /** From the design position, in stages: reaches whatever is on the design's branch. */
  private approach(bump: number, rack: number): boolean {
    this.rack = 0;
    this.upright.shiftRack(0);
    if (!this.place(0)) return false;
    for (let stage = 0; stage <= stages; stage += 1) {
      if (!this.solve((bump * stage) / stages, (rack * stage) / stages)) return false;
    }
    return true;
  }

  protected finish(): void {
    this.settled = true;
    this.lower.rate = 1 / this.heightRate;
    this.upright.perMetre(this.heightRate, this.wheel.centre);
    this.upright.pose.turn(this.wheel.spin, this.wheel.designSpin);
  }
}
