import type { Characteristic } from "@trunnion/register";
import { ChoiceField, TextField } from "../../components/form/form-field";

export interface ValueFieldProps {
  readonly name: string;
  readonly label: string;
  /** As entered. */
  readonly value: string;
  readonly characteristic: Characteristic;
  readonly hint?: string;
}

const examples: Readonly<Record<Characteristic["kind"], string>> = {
  quantity: "",
  choice: "",
  designation: "As stamped or printed: 7/16-20 UNF, grade 8, 175/70 R 13.",
  text: "In a few words.",
  date: "A day, month or year.",
};

function unitHint(characteristic: Characteristic): string {
  if (characteristic.kind !== "quantity") return examples[characteristic.kind];
  if (characteristic.notation === "toe") return "With in or out and per side or total: 5' in per side.";
  const { metric, imperial } = characteristic.units;
  const units = metric === imperial ? metric : `${metric} or ${imperial}`;
  return units === "" ? "A number." : `With its unit: ${units}.`;
}

/** What is entered names the choice it means; it stays to the letter while that choice is not changed. */
function choiceOptions(characteristic: Extract<Characteristic, { kind: "choice" }>, value: string) {
  const names = (one: (typeof characteristic.choices)[number]) => [one.code, one.label, ...(one.also ?? [])];
  const same = (word: string) => word.toLowerCase() === value.toLowerCase();
  const options = characteristic.choices.map((one) => ({
    value: value !== "" && names(one).some(same) ? value : one.label,
    label: one.label,
  }));
  const absent = characteristic.removable ? [{ value: "not fitted", label: "not fitted" }] : [];
  const known = [...options, ...absent].some((option) => option.value === value) || value === "";
  const other = known ? [] : [{ value, label: value }];
  return [{ value: "", label: "nothing" }, ...other, ...options, ...absent];
}

/** One value of a characteristic, in the way its kind is written: chosen from the list, or typed in the trade's notation. */
export function ValueField({ name, label, value, characteristic, hint }: ValueFieldProps) {
  if (characteristic.kind === "choice") {
    return (
      <ChoiceField
        name={name}
        label={label}
        value={value}
        options={choiceOptions(characteristic, value)}
        {...(hint === undefined || hint === "" ? {} : { hint })}
      />
    );
  }
  const removable = characteristic.removable ? " Or: not fitted." : "";
  const told = hint ?? `${unitHint(characteristic)}${removable}`;
  return (
    <TextField
      name={name}
      label={label}
      value={value}
      maxLength={2_000}
      {...(told === "" ? {} : { hint: told })}
    />
  );
}
