import type { Prisma } from "@trunnion/db";
import { stateKey, type Value } from "@trunnion/register";
import type { Assessment } from "../assessment";
import { dayColumn } from "../day";
import { valueColumns } from "../value-columns";

type CurrentRow = Omit<Prisma.CurrentValueCreateManyInput, "clubId">;

const numberOf = (value: Value | undefined) => (value?.kind === "quantity" ? value.si : null);

/** The rows of current values that an assessment amounts to. */
export function currentRows({ record, state, deviations }: Assessment): readonly CurrentRow[] {
  const compared = new Map(
    deviations.map((deviation) => [stateKey(deviation.characteristic, deviation.side), deviation]),
  );
  return [...state.entries()].map(([key, { characteristic, side, value, origin, originId, since }]) => ({
    carId: record.id,
    characteristic,
    side,
    ...valueColumns(value),
    origin,
    originId,
    since: since === undefined ? null : dayColumn(since),
    nominalNumber: numberOf(compared.get(key)?.nominal),
    verdict: compared.get(key)?.verdict ?? "notRecorded",
  }));
}
