/** A point (m) or a direction in the car's axes: x forward, y left, z up (ISO 8855). */
export interface Vector {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Which side of the car, seen from the driver's seat. */
export type Side = "left" | "right";

/** +1 on the left, −1 on the right: the sign of y outboard. */
export function sideSign(side: Side): 1 | -1 {
  return side === "left" ? 1 : -1;
}

/** @throws RangeError naming the first coordinate that is not finite */
export function requireFinite(values: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(values)) {
    if (!Number.isFinite(value)) throw new RangeError(`${name} must be a finite number, but is ${value}`);
  }
}
