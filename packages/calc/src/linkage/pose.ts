import type { Vector } from "../alignment/vector";
import {
  addScaled,
  copy,
  cross,
  dot,
  length,
  type MutableVector,
  mutable,
  normalise,
  subtract,
} from "./vector";

/** A right-handed set of unit vectors at a point, laid through three points of a rigid body. */
export class Triad {
  readonly origin = mutable();
  readonly first = mutable();
  readonly second = mutable();
  readonly third = mutable();

  /** First axis from `origin` towards `along`, second towards `aside`. */
  lay(origin: Vector, along: Vector, aside: Vector): void {
    copy(this.origin, origin);
    subtract(this.first, along, origin);
    normalise(this.first);
    subtract(this.second, aside, origin);
    addScaled(this.second, this.second, this.first, -dot(this.second, this.first));
    normalise(this.second);
    cross(this.third, this.first, this.second);
  }
}

/** Where a rigid body is now, against its design position: a rotation about `from`, which has come to `to`. */
export class Pose {
  private readonly from = mutable();
  private readonly to = mutable();
  // Columns of the rotation: where the design x, y and z directions point now.
  private readonly ex = mutable({ x: 1, y: 0, z: 0 });
  private readonly ey = mutable({ x: 0, y: 1, z: 0 });
  private readonly ez = mutable({ x: 0, y: 0, z: 1 });

  /** Takes the pose that brings the design triad onto the present one. */
  fit(design: Triad, now: Triad): void {
    copy(this.from, design.origin);
    copy(this.to, now.origin);
    column(this.ex, now, design.first.x, design.second.x, design.third.x);
    column(this.ey, now, design.first.y, design.second.y, design.third.y);
    column(this.ez, now, design.first.z, design.second.z, design.third.z);
  }

  /** The design pose, turning about `origin`. */
  reset(origin: Vector): void {
    copy(this.from, origin);
    copy(this.to, origin);
    copy(this.ex, { x: 1, y: 0, z: 0 });
    copy(this.ey, { x: 0, y: 1, z: 0 });
    copy(this.ez, { x: 0, y: 0, z: 1 });
  }

  /** Shifts by `move` and turns by `turn` (rad, about the car's axes) from where it is: one step of a solution. */
  nudge(move: Vector, turn: Vector): void {
    addScaled(this.to, this.to, move, 1);
    for (const axis of [this.ex, this.ey, this.ez]) rotate(axis, axis, turn);
  }

  /** Puts into `out` where a point that lies at `design` in the design position is now. */
  place(out: MutableVector, design: Vector): void {
    const x = design.x - this.from.x;
    const y = design.y - this.from.y;
    const z = design.z - this.from.z;
    out.x = this.to.x + this.ex.x * x + this.ey.x * y + this.ez.x * z;
    out.y = this.to.y + this.ex.y * x + this.ey.y * y + this.ez.y * z;
    out.z = this.to.z + this.ex.z * x + this.ey.z * y + this.ez.z * z;
  }

  /** Puts into `out` where a direction of the design position points now; `out` must not be `design`. */
  turn(out: MutableVector, design: Vector): void {
    out.x = this.ex.x * design.x + this.ey.x * design.y + this.ez.x * design.z;
    out.y = this.ex.y * design.x + this.ey.y * design.y + this.ez.y * design.z;
    out.z = this.ex.z * design.x + this.ey.z * design.y + this.ez.z * design.z;
  }
}

/** Puts into `out` the vector turned by the rotation vector `turn` (rad); Rodrigues' formula. `out` may be `vector`. */
export function rotate(out: MutableVector, vector: Vector, turn: Vector): void {
  const angle = length(turn);
  const sine = angle > 1e-8 ? Math.sin(angle) / angle : 1;
  const cosine = Math.cos(angle);
  const rest = angle > 1e-8 ? (1 - cosine) / (angle * angle) : 0.5;
  const along = dot(turn, vector) * rest;
  const x = turn.y * vector.z - turn.z * vector.y;
  const y = turn.z * vector.x - turn.x * vector.z;
  const z = turn.x * vector.y - turn.y * vector.x;
  out.x = vector.x * cosine + x * sine + turn.x * along;
  out.y = vector.y * cosine + y * sine + turn.y * along;
  out.z = vector.z * cosine + z * sine + turn.z * along;
}

function column(out: MutableVector, now: Triad, a: number, b: number, c: number): void {
  out.x = now.first.x * a + now.second.x * b + now.third.x * c;
  out.y = now.first.y * a + now.second.y * b + now.third.y * c;
  out.z = now.first.z * a + now.second.z * b + now.third.z * c;
}

/** The motion of a rigid body at one moment: it turns by `turn` per unit, and its point `at` moves by `move`. */
export class Twist {
  readonly at = mutable();
  readonly turn = mutable();
  readonly move = mutable();

  /** Puts into `out` how the body moves at `point`. */
  velocity(out: MutableVector, point: Vector): void {
    const x = point.x - this.at.x;
    const y = point.y - this.at.y;
    const z = point.z - this.at.z;
    out.x = this.move.x + this.turn.y * z - this.turn.z * y;
    out.y = this.move.y + this.turn.z * x - this.turn.x * z;
    out.z = this.move.z + this.turn.x * y - this.turn.y * x;
  }

  /** Adds `factor` times another twist about the same point. */
  add(other: Twist, factor: number): void {
    addScaled(this.turn, this.turn, other.turn, factor);
    addScaled(this.move, this.move, other.move, factor);
  }

  scale(factor: number): void {
    this.add(this, factor - 1);
  }
}
