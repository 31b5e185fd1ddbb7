import type { Prisma } from "@trunnion/db";
import { saySince, stateKey, type Value } from "@trunnion/register";
import type { Assessment } from "../assessment";
import { dayColumn } from "../day";
import { valueColumns } from "../value-columns";

/** A row of current values as it is written. */
export type CurrentRow = Omit<Prisma.CurrentValueCreateManyInput, "clubId">;

const numberOf = (value: Value | undefined) => (value?.kind === "quantity" ? value.si : null);

/** The rows of current values that an assessment amounts to: what only the specification says is no value of the car. */
export function currentRows({ record, state, deviations }: Assessment): readonly CurrentRow[] {
  const compared = new Map(
    deviations.map((deviation) => [stateKey(deviation.characteristic, deviation.side), deviation]),
  );
  const known = [...state.entries()].filter(([, { origin }]) => origin !== "specification");
  return known.map(([key, standing]) => ({
    carId: record.id,
    characteristic: standing.characteristic,
    side: standing.side,
    ...valueColumns(standing.value),
    origin: standing.origin,
    originId: standing.originId,
    since: standing.since === undefined ? null : dayColumn(standing.since),
    sinceText: saySince(standing) ?? null,
    nominalNumber: numberOf(compared.get(key)?.nominal),
    verdict: compared.get(key)?.verdict ?? "notRecorded",
  }));
}
