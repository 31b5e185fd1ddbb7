import {
  chassisKey,
  type RecordedValue,
  type RegisterRow,
  sameValue,
  stateKey,
  stateOn,
} from "@trunnion/register";
import type { CarRecord } from "../record";
import type { PlannedRow } from "./read";

/** Keeper of a car now, as the register has it. Personal data. */
export interface PresentKeeper {
  readonly keepershipId: string;
  readonly keeperId: string;
  readonly name: string | null;
  readonly address: string | null;
  readonly email: string | null;
  readonly phone: string | null;
}

export interface NumberBorne {
  readonly kind: "commission" | "engine" | "body" | "registration";
  readonly number: string;
  readonly key: string;
}

/** What a row says that the record does not say yet. */
export interface CarChanges {
  /** The car's own columns differ. */
  readonly facts: boolean;
  readonly numbers: readonly NumberBorne[];
  readonly options: readonly string[];
  readonly status: boolean;
  /** `correct` when the same keeper's particulars differ. */
  readonly keeper: "none" | "add" | "replace" | "correct";
  readonly asBuilt: readonly RecordedValue[];
  readonly now: readonly RecordedValue[];
}

function numbersIn(row: RegisterRow): readonly NumberBorne[] {
  return (["commission", "engine", "body", "registration"] as const).flatMap((kind) => {
    const number = row[kind];
    return number === undefined ? [] : [{ kind, number, key: chassisKey(number) }];
  });
}

function factsDiffer({ row, seriesId, serial }: PlannedRow, record: CarRecord): boolean {
  const series = seriesId !== null && seriesId !== record.series?.id;
  const place = serial !== null && serial !== record.basis.serial;
  const built = row.built !== undefined && row.built.text !== record.built;
  const first = row.firstRegistered !== undefined && row.firstRegistered.text !== record.firstRegistered;
  const remarks = row.remarks !== undefined && row.remarks !== record.remarks;
  return series || place || built || first || remarks;
}

function keeperChange(row: RegisterRow, present: PresentKeeper | undefined): CarChanges["keeper"] {
  if (!row.keeper) return "none";
  if (!present) return "add";
  const { name, address, email, phone } = row.keeper;
  if (name !== undefined && name !== present.name) return "replace";
  const said = { address, email, phone };
  const differs = (["address", "email", "phone"] as const).some(
    (part) => said[part] !== undefined && said[part] !== present[part],
  );
  return differs ? "correct" : "none";
}

/** The values of a row that the record does not have; for a new car, all of them. */
function newValues(row: RegisterRow, record: CarRecord, today: string) {
  const asBuilt = new Map(
    record.asBuilt.map((value) => [stateKey(value.characteristic, value.side), value.value]),
  );
  const state = stateOn(today, { entries: new Map(), ...record });
  const isNew = (known: RegisterRow["asBuilt"][number]["value"] | undefined, said: RecordedValue) =>
    known === undefined || !sameValue(known, said.value);
  return {
    asBuilt: row.asBuilt.filter((said) => isNew(asBuilt.get(stateKey(said.characteristic, said.side)), said)),
    now: row.now.filter((said) => isNew(state.get(stateKey(said.characteristic, said.side))?.value, said)),
  };
}

/** What a row adds to a car; `record` is missing for a car that is not on the register yet. */
export function changesOf(
  planned: PlannedRow,
  record: CarRecord | undefined,
  keeper: PresentKeeper | undefined,
  today: string,
): CarChanges {
  const { row } = planned;
  if (!record) {
    return {
      facts: true,
      numbers: numbersIn(row),
      options: [...new Set(row.options)],
      status: row.status !== undefined,
      keeper: row.keeper ? "add" : "none",
      asBuilt: row.asBuilt,
      now: row.now,
    };
  }
  const borne = new Set(record.identities.map(({ kind, number }) => `${kind} ${chassisKey(number)}`));
  return {
    facts: factsDiffer(planned, record),
    numbers: numbersIn(row).filter(({ kind, key }) => !borne.has(`${kind} ${key}`)),
    options: [...new Set(row.options)].filter((code) => !record.basis.options.includes(code)),
    status: row.status !== undefined && row.status !== record.status,
    keeper: keeperChange(row, keeper),
    ...newValues(row, record, today),
  };
}

/** True when a row says nothing that the record does not say already. */
export function nothingNew(changes: CarChanges): boolean {
  const lists = [changes.numbers, changes.options, changes.asBuilt, changes.now];
  return (
    !changes.facts && !changes.status && changes.keeper === "none" && lists.every((list) => list.length === 0)
  );
}
