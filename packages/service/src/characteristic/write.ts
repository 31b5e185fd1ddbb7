import type { Prisma } from "@trunnion/db";
import { type Characteristic, type FieldDifference, Invalid, refused } from "@trunnion/register";
import { v7 as uuid } from "uuid";
import { z } from "zod";
import type { Context } from "../context";
import { lineInput } from "../entry-input";
import { writeJournal } from "../journal";
import { requireRole } from "../role";
import {
  characteristicColumns,
  characteristicFields,
  choicesGone,
  codeOf,
  readCharacteristic,
  refuseClash,
  structuralChange,
} from "./policy";
import { listOwnCharacteristics, ownCharacteristic } from "./read";

/** Most characteristics a club has of its own: forms and sheets stay readable. */
export const OWN_LIMIT = 500;

export const addCharacteristicInput = z.object({
  /** Dotted key; left empty, it is made of the label, under `club`. */
  key: lineInput(120).default(""),
  ...characteristicFields,
});
export type AddCharacteristicInput = z.infer<typeof addCharacteristicInput>;

const json = (part: object) => part as unknown as Prisma.InputJsonObject;

/**
 * Adds a characteristic of the club's own, and tells its key.
 *
 * @throws Refusal ROLE_NEEDED; Invalid for everything that is wrong, a key or name that is taken included
 */
export async function addCharacteristic(ctx: Context, input: AddCharacteristicInput): Promise<string> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const { own } = await listOwnCharacteristics(ctx);
  if (own.length >= OWN_LIMIT) {
    throw new Invalid([{ field: "label", message: `a club has at most ${OWN_LIMIT} of its own` }]);
  }
  const made = codeOf(input.label);
  const key = input.key === "" && made !== "" ? `club.${made}` : input.key;
  const characteristic = readCharacteristic(key, input);
  refuseClash(
    characteristic,
    own.map((one) => one.characteristic),
  );
  const id = uuid();
  const { columns, definition } = characteristicColumns(characteristic);
  await ctx.db.characteristic.create({ data: { id, ...columns, definition: json(definition) } });
  const after = json(characteristic);
  await writeJournal(ctx, [{ action: "characteristic.add", noun: "characteristic", nounId: id, after }]);
  return key;
}

export const changeCharacteristicInput = z.object({
  key: lineInput(120).min(1),
  version: z.coerce.number().int().min(0),
  opened: z.record(z.string().max(40), z.string().max(40_000)).default({}),
  reason: lineInput(500).default(""),
  ...characteristicFields,
});
export type ChangeCharacteristicInput = z.infer<typeof changeCharacteristicInput>;

const sayChoices = (characteristic: Characteristic) =>
  characteristic.kind === "choice"
    ? characteristic.choices
        .map(({ code, label, also = [] }) => [code, label, ...also].join(" / "))
        .join("; ")
    : "";

/** What may change of a characteristic, as text; the same is sent along as `opened`. */
export function characteristicTexts(characteristic: Characteristic): Readonly<Record<string, string>> {
  const { label, assembly, kind, help, also = [] } = characteristic;
  return { label, assembly, kind, help, also: also.join(", "), choices: sayChoices(characteristic) };
}

const labels: Readonly<Record<string, string>> = {
  label: "Label",
  assembly: "Assembly",
  kind: "Kind",
  help: "Help",
  also: "Other names",
  choices: "Choices",
};

function refuseIfChanged(
  input: ChangeCharacteristicInput,
  {
    now,
    wanted,
    version,
  }: { readonly now: Characteristic; readonly wanted: Characteristic; readonly version: number },
): void {
  if (input.version === version) return;
  const [theirs, yours] = [characteristicTexts(now), characteristicTexts(wanted)];
  const differences: readonly FieldDifference[] = Object.keys(theirs).flatMap((field) => {
    const was = input.opened[field] ?? "";
    const is = theirs[field] ?? "";
    if (was === is) return [];
    return [{ field, label: labels[field] ?? field, was, theirs: is, yours: yours[field] ?? "" }];
  });
  throw refused("CHANGED_MEANWHILE", { what: "this characteristic", version, differences });
}

/**
 * Changes one of the club's own characteristics: label, help, names, assembly, units and choices. Its kind, and what
 * else the reading of values depends on, may change as long as nothing is recorded of it; a choice in use stays.
 *
 * @throws Refusal ROLE_NEEDED, CHARACTERISTIC_NOT_FOUND, CHANGED_MEANWHILE, CHARACTERISTIC_HAS_VALUES; Invalid for what
 * is wrong. Then nothing is written.
 */
export async function changeCharacteristic(ctx: Context, input: ChangeCharacteristicInput): Promise<void> {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const { key } = input;
  await ctx.db
    .$queryRaw`SELECT id FROM characteristic WHERE club_id = ${ctx.club.id}::uuid AND key = ${key} FOR UPDATE`;
  const { characteristic: now, use, version } = await ownCharacteristic(ctx, key);
  const wanted = readCharacteristic(key, input);
  refuseIfChanged(input, { now, wanted, version });
  const { own } = await listOwnCharacteristics(ctx);
  refuseClash(
    wanted,
    own.flatMap(({ characteristic }) => (characteristic.key === key ? [] : [characteristic])),
  );
  const structural = structuralChange(now, wanted);
  if (structural !== undefined && use.values > 0) {
    throw refused("CHARACTERISTIC_HAS_VALUES", {
      characteristic: now.label,
      what: structural,
      count: use.values,
    });
  }
  const [gone] = choicesGone(wanted, use.choices);
  if (gone !== undefined) {
    const count = use.choices[gone] ?? 0;
    throw refused("CHARACTERISTIC_HAS_VALUES", {
      characteristic: now.label,
      what: `choice "${gone}"`,
      count,
    });
  }
  const { columns, definition } = characteristicColumns(wanted);
  const row = await ctx.db.characteristic.update({
    where: { clubId_key: { clubId: ctx.club.id, key } },
    data: { ...columns, definition: json(definition) },
    select: { id: true },
  });
  await writeJournal(ctx, [
    {
      action: "characteristic.change",
      noun: "characteristic",
      nounId: row.id,
      ...(input.reason === "" ? {} : { reason: input.reason }),
      before: json(now),
      after: json(wanted),
    },
  ]);
}
