import type { Side, Vector } from "../alignment/vector";
import { printQuantity } from "../quantity/print";
import type { Adjuster, Settable } from "./adjuster";

const fractions: readonly (readonly [number, string])[] = [
  [0, ""],
  [1 / 6, "⅙"],
  [1 / 4, "¼"],
  [1 / 3, "⅓"],
  [1 / 2, "½"],
  [2 / 3, "⅔"],
  [3 / 4, "¾"],
  [5 / 6, "⅚"],
];

/** Turns as a mechanic counts them: "2½ turns", "⅙ turn", "1.2 turns". Sign is told by the direction, not here. */
export function turnsInWords(turns: number): string {
  const size = Math.abs(turns);
  const whole = Math.floor(size + 1e-6);
  const fraction = fractions.find(([value]) => Math.abs(size - whole - value) < 1e-6)?.[1];
  const figure =
    fraction === undefined ? String(Number(size.toFixed(3))) : `${whole === 0 ? "" : whole}${fraction}`;
  return `${figure === "" ? "0" : figure} ${size <= 1 ? "turn" : "turns"}`;
}

/** The direction a shift mostly goes in, as said at the car: "outboard", "rearwards", "up". */
export function directionInWords({ x, y, z }: Vector, side: Side): string {
  const outboard = side === "left" ? y : -y;
  const largest = Math.max(Math.abs(x), Math.abs(y), Math.abs(z));
  if (Math.abs(outboard) === largest) return outboard > 0 ? "outboard" : "inboard";
  if (Math.abs(x) === largest) return x > 0 ? "forwards" : "rearwards";
  return z > 0 ? "up" : "down";
}

/** What to do at one adjuster, in words: "screw upper ball joint 1½ turns outboard". */
export function instruction(settable: Settable<string>, steps: number, side: Side): string {
  const { adjuster } = settable;
  switch (adjuster.kind) {
    case "screwedJoint": {
      const moved = settable.effect(steps).shift?.[adjuster.point] ?? adjuster.axis;
      return `screw ${adjuster.name} ${turnsInWords(steps * adjuster.step)} ${directionInWords(moved, side)}`;
    }
    case "tieRod": {
      const longer = (settable.effect(steps).tieRod ?? 0) > 0;
      return `make ${adjuster.name} ${turnsInWords(steps * adjuster.step)} ${longer ? "longer" : "shorter"}`;
    }
    case "shims":
      return shimWords(adjuster, steps);
    case "slot": {
      const shift = settable.effect(steps).shift ?? {};
      const moved = Object.values(shift)[0] ?? adjuster.axis;
      const by = printQuantity(Math.abs(steps * adjuster.step), { dimension: "length", unit: "mm" });
      return `slide ${adjuster.name} ${by} ${directionInWords(moved, side)}`;
    }
    case "camberBolt":
    case "eccentric":
      return `turn ${adjuster.name} ${turnInWords(adjuster, steps)} (${directionInWords(pushOf(settable, steps), side)})`;
  }
}

type TurnedBolt = Extract<Adjuster<string>, { kind: "camberBolt" | "eccentric" }>;

function turnInWords({ setting, step }: TurnedBolt, steps: number): string {
  const degrees = (angle: number): string => `${Number(((angle * 180) / Math.PI).toFixed(1))}°`;
  return `from ${degrees(setting)} to ${degrees(setting + steps * step)}`;
}

/** Which way the cam pushes: a mechanic cannot tell from an angle alone which way round is meant. */
function pushOf({ adjuster, effect }: Settable<string>, steps: number): Vector {
  if (adjuster.kind === "eccentric") return Object.values(effect(steps).shift ?? {})[0] ?? adjuster.axis;
  if (adjuster.kind !== "camberBolt") throw new TypeError(`a ${adjuster.kind} has no cam`);
  const { axis, setting, step } = adjuster;
  const sign = Math.sign(Math.sin(setting + steps * step) - Math.sin(setting));
  return { x: axis.x * sign, y: axis.y * sign, z: axis.z * sign };
}

function shimWords({ name, fitted }: Extract<Adjuster<string>, { kind: "shims" }>, steps: number): string {
  const count = Math.abs(steps);
  const shims = `${count} ${count === 1 ? "shim" : "shims"}`;
  return `${steps > 0 ? `add ${shims} at` : `take ${shims} out at`} ${name} (${fitted + steps} in all)`;
}
