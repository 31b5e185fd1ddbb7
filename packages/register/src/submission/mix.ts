import type { Characteristic, Side } from "../characteristic/characteristic";
import { type Fitting, type MixWarning, mixWarnings } from "../part/mix";
import { stateKey } from "../state/key";
import type { State } from "../state/state";
import { sameValue } from "../value/same";
import type { Value } from "../value/value";
import {
  type ReadModification,
  type ReadSubmission,
  type SubmissionBasis,
  stateAfter,
  stateBefore,
} from "./read";

/** Threads or lengths that a submission brings beside others they are taken for. */
export interface SubmissionMix extends MixWarning {
  /** Place of the modification that brings it, from 0. */
  readonly of: number;
}

interface Brought extends Fitting {
  readonly brought: boolean;
}

const sideWords: Readonly<Record<Side, string>> = { whole: "", left: ", left", right: ", right" };

/** Lengths of parts that come in a left and a right, or an old and a new one: settings are not lengths to mix. */
const isPartLength = (one: Characteristic) =>
  one.kind === "quantity" && one.dimension === "length" && /(^|\.)(length|\w+Length)$/.test(one.key);
const isThread = (one: Characteristic) => one.kind === "designation" && one.designation === "thread";

function named(characteristic: Characteristic, side: Side, prefix = ""): Pick<Fitting, "what" | "assembly"> {
  return { what: `${prefix}${characteristic.label}${sideWords[side]}`, assembly: characteristic.assembly };
}

const length = (si: number): Value => ({
  kind: "quantity",
  si,
  resolution: 0.001,
  entered: `${(si * 1000).toFixed(1).replace(/\.0$/, "")} mm`,
});

function ofFasteners({ changes, fasteners }: ReadModification): readonly Brought[] {
  const assemblies = [...new Set(changes.map(({ characteristic }) => characteristic.assembly))];
  return fasteners.flatMap(({ place, thread, length: long }): Brought[] =>
    assemblies.flatMap((assembly) => {
      const base = {
        what: `the fastener ${place === "" ? "without a place" : `"${place}"`}`,
        assembly,
        brought: true,
      };
      return [
        ...(thread === null
          ? []
          : [{ ...base, value: { kind: "designation", canonical: thread, entered: thread } as const }]),
        ...(long === null ? [] : [{ ...base, spot: `fastener ${assembly} ${thread}`, value: length(long) }]),
      ];
    }),
  );
}

/** What is changed, beside what was there before: old and new part lie on one bench. */
function ofChanges({ changes }: ReadModification): readonly Brought[] {
  return changes.flatMap(({ characteristic, side, before, after }): Brought[] => {
    if (!isThread(characteristic) && !isPartLength(characteristic)) return [];
    const spot = isThread(characteristic) ? {} : { spot: characteristic.key };
    const now = { ...named(characteristic, side), ...spot, value: after, brought: true };
    // What is set anew is one part, not two.
    const same = before === undefined || sameValue(before, after) || characteristic.setting === true;
    if (same) return [now];
    return [now, { ...named(characteristic, side, "before it, "), ...spot, value: before, brought: false }];
  });
}

/** Threads, and lengths of the same kind, that the car has besides. */
function ofState(after: State, { changes }: ReadModification, basis: SubmissionBasis): readonly Brought[] {
  const own = new Set(changes.map(({ characteristic, side }) => stateKey(characteristic.key, side)));
  const keys = new Set(changes.map(({ characteristic }) => characteristic.key));
  return [...after].flatMap(([key, { characteristic: name, side, value }]): Brought[] => {
    const characteristic = basis.book.find(name);
    if (!characteristic || own.has(key)) return [];
    const other = isPartLength(characteristic) && keys.has(name);
    if (!isThread(characteristic) && !other) return [];
    return [{ ...named(characteristic, side), ...(other ? { spot: name } : {}), value, brought: false }];
  });
}

/**
 * Warns of threads and lengths that a submission brings and that are taken for others: its fasteners and parts among each
 * other, beside what the car has in the same assembly, and beside what was there before. No hindrance: both may be right,
 * and then both have to be marked. Left and right are said so whatever the club calls them.
 */
export function mixesOfSubmission(
  { modifications }: ReadSubmission,
  basis: SubmissionBasis,
): readonly SubmissionMix[] {
  return modifications.flatMap((modification, of) => {
    const recorded = basis.stateOn(modification.fitted?.latest ?? basis.today);
    const after = stateAfter(stateBefore(recorded, modification.changes), modification.changes);
    const brought = [...ofFasteners(modification), ...ofChanges(modification)];
    const fittings = [...brought, ...ofState(after, modification, basis)];
    const fresh = new Set(fittings.filter((one) => one.brought).map(({ what }) => what));
    return mixWarnings(fittings)
      .filter(({ one, other }) => fresh.has(one) || fresh.has(other))
      .map((warning) => ({ ...warning, of }));
  });
}
