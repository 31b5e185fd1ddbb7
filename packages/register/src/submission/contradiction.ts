import { parseDesignation } from "@trunnion/calc";
import type { Side } from "../characteristic/characteristic";
import { stateKey } from "../state/key";
import type { State, StateValue } from "../state/state";
import type { Value } from "../value/value";
import type { ReadChange } from "./read";
import type { Tell } from "./read-field";

const axles = ["front", "rear"] as const;

/** A rubber bush is bored up to this much under its bar, and squeezed on; common practice, no source. Metres. */
const SQUEEZE = 0.001;

interface Look {
  readonly of: (key: string, side?: Side) => StateValue | undefined;
  /** The field of the first of these that this submission changes; nothing where it changes none of them. */
  readonly changed: (...keys: readonly string[]) => string | undefined;
  readonly tell: Tell;
}

const si = (found: StateValue | undefined) => (found?.value.kind === "quantity" ? found.value.si : undefined);
const isAbsent = (value: Value | undefined) => value?.kind === "absent";
const entered = (found: StateValue | undefined) => `"${found?.value.entered ?? ""}"`;

function bars({ of, changed, tell }: Look): void {
  for (const axle of axles) {
    const bar = `${axle}.antiRollBar`;
    const [diameter, bore, bush] = [of(`${bar}.diameter`), of(`${bar}.bore`), of(`${bar}.bushBore`)];
    const [d, b, eye] = [si(diameter), si(bore), si(bush)];
    const tube = changed(`${bar}.bore`, `${bar}.diameter`);
    if (tube && d !== undefined && b !== undefined && b >= d)
      tell(tube, `A bar of ${entered(diameter)} cannot have a bore of ${entered(bore)}: check both.`);
    const section = of(`${bar}.section`)?.value;
    const hollow = changed(`${bar}.bore`, `${bar}.section`);
    if (hollow && b !== undefined && section?.kind === "choice" && section.code === "solid")
      tell(hollow, `A solid bar has no bore, and the bore is ${entered(bore)}: correct one of them.`);
    const held = changed(`${bar}.diameter`, `${bar}.bushBore`);
    if (held && d !== undefined && eye !== undefined && d > eye + SQUEEZE)
      tell(
        held,
        `A bar of ${entered(diameter)} does not go into a bush bored ${entered(bush)}: say which bush it turns in now, or check both.`,
      );
  }
}

const linkParts = ["joint", "length", "boltThread"] as const;

/** A part that is said to be gone and described in the same breath. */
function removedYetDescribed({ of, changed, tell }: Look): void {
  for (const axle of axles) {
    const bar = `${axle}.antiRollBar`;
    if (!isAbsent(of(`${bar}.diameter`)?.value)) continue;
    const said = changed(
      ...["bore", "middleLength", "leverLength", "position", "bushBore"].map((part) => `${bar}.${part}`),
    );
    const link = changed(...linkParts.map((part) => `${axle}.dropLink.${part}`));
    const place = said ?? link;
    if (place)
      tell(
        place,
        `The ${axle} anti-roll bar is said not to be fitted: take this line out, or say which bar there is.`,
      );
  }
}

/** What cannot be missing on both sides of a car that stands on its wheels. */
function nothingHolds({ of, changed, tell }: Look): void {
  for (const axle of axles) {
    const mount = `${axle}.damper.lowerMount`;
    const place = changed(mount);
    if (place === undefined) continue;
    if (isAbsent(of(mount, "left")?.value) && isAbsent(of(mount, "right")?.value))
      tell(
        place,
        `The lower mount is said to be missing on both sides, so nothing would hold the ${axle} dampers: say what they are mounted on.`,
      );
  }
}

function wheels({ of, changed, tell }: Look): void {
  for (const axle of axles) {
    const [tyre, wheel] = [of(`tyres.${axle}.size`), of(`wheels.${axle}.size`)];
    const place = changed(`tyres.${axle}.size`, `wheels.${axle}.size`);
    if (!place || tyre?.value.kind !== "designation" || wheel?.value.kind !== "designation") continue;
    const rim = parseDesignation("wheel", wheel.value.canonical).rimDiameter;
    if (Math.abs(parseDesignation("tyre", tyre.value.canonical).rimDiameter - rim) > 1e-4)
      tell(
        place,
        `A tyre ${entered(tyre)} does not go on a wheel ${entered(wheel)}: their rims differ. Say what both are now.`,
      );
  }
}

/**
 * Tells what cannot be true together on one car, at the field of this submission that brought it: what the record alone
 * contradicts is no business of it. Only what nobody can dispute; what is merely unwise is a consequence.
 */
export function contradictionsIn(after: State, changes: readonly ReadChange[], tell: Tell): void {
  const fields = new Map(changes.map(({ characteristic, field }) => [characteristic.key, field]));
  const look: Look = {
    of: (key, side = "whole") => after.get(stateKey(key, side)),
    changed: (...keys) => keys.map((key) => fields.get(key)).find((field) => field !== undefined),
    tell,
  };
  for (const rule of [bars, removedYetDescribed, nothingHolds, wheels]) rule(look);
}
