import type { Applicability, SpecificationEntry } from "./specification";

interface Span<T> {
  readonly from: T | undefined;
  readonly to: T | undefined;
}

const serials = ({ serialFrom, serialTo }: Applicability): Span<number> => ({
  from: serialFrom,
  to: serialTo,
});
const days = ({ builtFrom, builtTo }: Applicability): Span<string> => ({ from: builtFrom, to: builtTo });

function meet<T extends number | string>(one: Span<T>, other: Span<T>): boolean {
  const apart = (a: Span<T>, b: Span<T>) => a.to !== undefined && b.from !== undefined && a.to < b.from;
  return !apart(one, other) && !apart(other, one);
}

function within<T extends number | string>(inner: Span<T>, outer: Span<T>): boolean {
  const fromInside = outer.from === undefined || (inner.from !== undefined && inner.from >= outer.from);
  const toInside = outer.to === undefined || (inner.to !== undefined && inner.to <= outer.to);
  return fromInside && toInside;
}

const spansWithin = (inner: Applicability, outer: Applicability) =>
  within(serials(inner), serials(outer)) && within(days(inner), days(outer));

/**
 * Whether one entry is more specific than another for the same characteristic: an entry for an option outweighs one
 * without; else one whose spans lie inside the other's; else, spans being equal, one for a side outweighs one for
 * both. Entries of which neither outweighs the other must not apply to one car.
 */
export function outweighs(one: SpecificationEntry, other: SpecificationEntry): boolean {
  const [a, b] = [one.applicability, other.applicability];
  if ((a.option === undefined) !== (b.option === undefined)) return a.option !== undefined;
  const [inside, around] = [spansWithin(a, b), spansWithin(b, a)];
  if (inside !== around) return inside;
  return inside && one.side !== "whole" && other.side === "whole";
}

/**
 * Whether one car could fall under both entries. Two different options may be
 * exclusive, which a specification does not say: they are not held to overlap, and a car that has both is undecided.
 */
export function overlap(one: SpecificationEntry, other: SpecificationEntry): boolean {
  const [a, b] = [one.applicability, other.applicability];
  const sidesMeet = one.side === other.side || one.side === "whole" || other.side === "whole";
  const optionsMeet = a.option === undefined || b.option === undefined || a.option === b.option;
  return sidesMeet && optionsMeet && meet(serials(a), serials(b)) && meet(days(a), days(b));
}
