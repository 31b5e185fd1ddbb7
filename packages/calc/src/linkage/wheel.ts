import { spinAxisOf } from "../alignment/axis";
import { type Side, sideSign, type Vector } from "../alignment/vector";
import type { WheelHardpoints } from "./hardpoint";
import { addScaled, cross, dot, type MutableVector, mutable } from "./vector";

/** Up, square to the ground, on a car that does not roll. */
export const upright: Vector = mutable({ x: 0, y: 0, z: 1 });
const change = mutable();

/** The wheel of a corner: a rigid disc of the loaded radius. */
export class Wheel {
  readonly side: Side;
  readonly sign: 1 | -1;
  readonly loadedRadius: number;
  readonly designCentre: Vector;
  readonly designSpin: Vector;
  /** On level ground. */
  readonly designContact: Vector;
  /** Now. */
  readonly centre: MutableVector;
  /** Now; unit, outboard. */
  readonly spin: MutableVector;

  constructor(wheel: WheelHardpoints) {
    this.side = wheel.side;
    this.sign = sideSign(wheel.side);
    this.loadedRadius = wheel.loadedRadius;
    this.designCentre = { ...wheel.wheelCentre };
    this.designSpin = spinAxisOf(wheel);
    this.centre = mutable(this.designCentre);
    this.spin = mutable(this.designSpin);
    const contact = mutable();
    this.contact(contact, upright);
    this.designContact = contact;
  }

  /** Puts into `out` the lowest point of the disc now; `up` (unit) is square to the ground. */
  contact(out: MutableVector, up: Vector): void {
    const { spin, centre, loadedRadius } = this;
    const lean = dot(spin, up);
    const reach = loadedRadius / Math.sqrt(1 - lean * lean);
    addScaled(out, centre, spin, lean * reach);
    addScaled(out, out, up, -reach);
  }

  /**
   * Puts into `out` the velocity of the contact point (the lowest point, not a point of the tread) while the wheel
   * centre moves by `move` and the wheel turns by `turn`. `out` may be `move`.
   */
  contactVelocity(out: MutableVector, { move, turn, up }: { move: Vector; turn: Vector; up: Vector }): void {
    const { spin, loadedRadius } = this;
    cross(change, turn, spin);
    const lean = dot(spin, up);
    const leanRate = dot(change, up);
    const square = 1 - lean * lean;
    const reach = loadedRadius / Math.sqrt(square);
    const reachRate = (reach * lean * leanRate) / square;
    addScaled(out, move, spin, leanRate * reach + lean * reachRate);
    addScaled(out, out, change, lean * reach);
    addScaled(out, out, up, -reachRate);
  }
}
