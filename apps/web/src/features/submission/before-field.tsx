"use client";
import {
  type ChangeDraft,
  type Characteristic,
  type CharacteristicBook,
  type ModificationDraft,
  printValue,
  type State,
  type StateValue,
  type SubmissionContent,
  type Value,
} from "@trunnion/register";
import { ChoiceField, TextField } from "../../components/form/form-field";

export interface ChangeFieldsProps {
  readonly modification: ModificationDraft;
  /** Its place in the submission, from 0. */
  readonly of: number;
  readonly content: SubmissionContent;
  readonly book: CharacteristicBook;
  /** What the record says of the car on the day. */
  readonly recorded: State;
  readonly sideWords: { readonly left: string; readonly right: string };
}

/** Name of a field of one change. */
export const at = (of: number, part: string) => `modifications.${of}.${part}`;

/** One line of a change, with its place in it. */
export interface LineProps extends ChangeFieldsProps {
  readonly change: ChangeDraft;
  readonly place: number;
}

/** What may be chosen, as the form has it. */
export const labelsOf = (characteristic: Extract<Characteristic, { kind: "choice" }>) => [
  ...characteristic.choices.map(({ label }) => label),
  ...(characteristic.removable ? ["Not fitted"] : []),
];

export const optionsOf = (labels: readonly string[]) => labels.map((label) => ({ value: label, label }));

/** What the record has, as it is written into the field: in the owner's units, and a choice by its label. */
function recordedText(
  characteristic: Characteristic,
  value: Value | undefined,
  units: SubmissionContent["units"],
): string {
  if (value === undefined) return "";
  if (value.kind === "absent" && characteristic.kind === "choice") return "Not fitted";
  return printValue(characteristic, value, { system: units });
}

/**
 * What was there before: the record's value, to be changed only where the record is wrong. A hidden field says what it
 * was filled with, so that what nobody touched is told from what somebody typed.
 */
export function BeforeField({
  characteristic,
  change,
  place,
  content,
  of,
  recorded,
}: LineProps & { readonly characteristic: Characteristic }) {
  const known = recorded.get(`${change.characteristic} ${change.side}`);
  const shown = recordedText(characteristic, known?.value, content.units);
  const name = at(of, `changes.${place}.before`);
  const field = {
    name,
    label: "Before",
    value: change.before === "" ? shown : change.before,
    hint: sayBefore(shown, known, change.before),
  };
  return (
    // Anew where the record has something else on the day that is typed; never for a key pressed in it.
    <div key={shown} className={change.before === "" && shown !== "" ? "[&_.field]:text-soft" : ""}>
      <input type="hidden" name={at(of, `changes.${place}.recorded`)} value={shown} />
      {characteristic.kind === "choice" ? (
        <ChoiceField
          {...field}
          options={[
            ...(shown === "" ? [{ value: "", label: "Not known" }] : []),
            ...optionsOf(
              [...new Set([field.value, ...labelsOf(characteristic)])].filter((one) => one !== ""),
            ),
          ]}
        />
      ) : (
        <TextField {...field} autoComplete="off" />
      )}
    </div>
  );
}

function sayBefore(shown: string, known: StateValue | undefined, typed: string): string {
  if (known === undefined) return "The record does not know. Leave empty if you do not either.";
  const specified = known.origin === "specification" ? ", as specified" : "";
  const { entered } = known.value;
  if (typed !== "")
    return `You correct the record, which has ${entered}${specified}. The registrar is shown both.`;
  const as = entered.toLowerCase() === shown.toLowerCase() ? "" : `, which has it as ${entered}`;
  return `From the record${specified}${as}. Change it only where that is wrong.`;
}
