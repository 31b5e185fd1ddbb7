import type { JournalPage } from "@trunnion/api";
import type { ReactNode } from "react";
import { Button } from "../../components/button";
import { Choice, Field } from "../../components/field";
import type { JournalQuery } from "../../lib/path";

export interface FilterFormProps {
  /** Address of the journal shown. */
  readonly action: string;
  readonly query: JournalQuery;
  readonly persons: JournalPage["persons"];
  readonly actions: JournalPage["actions"];
  /** A car's own journal is of that car already. */
  readonly askCar: boolean;
  /** What is wrong with what was asked for, by field. */
  readonly errors: Readonly<Record<string, string>>;
}

/** What the journal is narrowed to: a form that makes an address. */
export function FilterForm({ action, query, persons, actions, askCar, errors }: FilterFormProps): ReactNode {
  const personChoices = persons.map(({ personId, name, left }) => ({
    value: personId ?? "none",
    label: left ? `${name} (left the club)` : name,
  }));
  const actionChoices = actions.map((one) => ({ value: one.action, label: one.what }));
  return (
    <form
      action={action}
      aria-label="Narrow the journal"
      className="print:hidden grid grid-cols-1 items-start gap-x-5 gap-y-3 border-hair border-b pb-5 sm:grid-cols-2 wide:grid-cols-3"
    >
      {askCar ? (
        <Field
          name="car"
          label="Car"
          value={query.car ?? ""}
          hint="Its chassis number"
          {...told(errors, "car")}
        />
      ) : null}
      <Choice
        name="person"
        label="Who"
        value={query.person ?? ""}
        options={[{ value: "", label: "Everybody" }, ...personChoices]}
      />
      <Choice
        name="action"
        label="What was done"
        value={query.action ?? ""}
        options={[{ value: "", label: "Everything" }, ...actionChoices]}
      />
      <DayInput name="from" label="From" query={query} errors={errors} />
      <DayInput name="to" label="Until" query={query} errors={errors} />
      <div className="self-center">
        <Button>Show</Button>
      </div>
    </form>
  );
}

const told = (errors: FilterFormProps["errors"], name: string) => {
  const error = errors[name];
  return error === undefined ? {} : { error };
};

interface DayInputProps extends Pick<FilterFormProps, "query" | "errors"> {
  readonly name: "from" | "to";
  readonly label: string;
}

function DayInput({ name, label, query, errors }: DayInputProps): ReactNode {
  const error = errors[name];
  const id = `journal-${name}`;
  return (
    <div className="grid gap-1">
      <label htmlFor={id} className="font-semibold text-small">
        {label}
      </label>
      <input
        id={id}
        name={name}
        type="date"
        defaultValue={query[name] ?? ""}
        aria-describedby={`${id}-hint`}
        {...(error === undefined ? {} : { "aria-invalid": true as const })}
        className="field"
      />
      <p
        id={`${id}-hint`}
        className={error === undefined ? "text-fine text-soft" : "border-red border-l-4 pl-2 text-small"}
      >
        {error ?? "Days begin and end at midnight UTC."}
      </p>
    </div>
  );
}
