import type { PartialDate } from "@trunnion/register";
import { dayColumn } from "./day";

type DateColumns<P extends string> = { readonly [K in `${P}Text`]: string | null } & {
  readonly [K in `${P}Earliest` | `${P}Latest`]: Date | null;
};

/** The three columns of a date as far as it is known; all empty for one that is not. */
export function partialDateColumns<P extends string>(prefix: P, date: PartialDate | null): DateColumns<P> {
  return {
    [`${prefix}Text`]: date?.text ?? null,
    [`${prefix}Earliest`]: date ? dayColumn(date.earliest) : null,
    [`${prefix}Latest`]: date ? dayColumn(date.latest) : null,
  } as DateColumns<P>;
}
