import type { Side } from "../characteristic/characteristic";

/** Key of a characteristic on a side, in the maps of the engines. */
export function stateKey(characteristic: string, side: Side): string {
  return `${characteristic} ${side}`;
}
