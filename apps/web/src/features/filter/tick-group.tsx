"use client";
import { useForm } from "../../components/form/edit-form";
import { fieldId } from "../../components/form/field-id";
import { type Option, TickField } from "../../components/form/form-field";

export interface TickGroupProps {
  readonly legend: string;
  /** Name of the list: ends with `[]`. */
  readonly name: string;
  readonly ticked: readonly string[];
  readonly options: readonly Option[];
}

/** Several of a list. What was ticked and is offered no longer stays in sight, so that nothing is lost unseen. */
export function TickGroup({ legend, name, ticked, options }: TickGroupProps) {
  const { errors } = useForm();
  const problems = errors[name] ?? [];
  const id = fieldId(name);
  const known = new Set(options.map(({ value }) => value));
  const lost = name.endsWith("series[]") ? ticked.filter((value) => !known.has(value)) : [];
  const all = [...options, ...lost.map((value) => ({ value, label: `${value} (no such series)` }))];
  return (
    <fieldset
      id={id}
      className="sm:col-span-2"
      {...(problems.length === 0 ? {} : { "aria-describedby": `${id}-error` })}
    >
      <legend className="font-semibold">{legend}</legend>
      <div className="flex flex-wrap gap-x-6">
        {all.map(({ value, label }) => (
          <TickField key={value} name={name} of={value} label={label} ticked={ticked.includes(value)} />
        ))}
      </div>
      {problems.length === 0 ? null : (
        <p id={`${id}-error`} className="border-red border-l-4 pl-2 text-small">
          {problems.join(" ")}
        </p>
      )}
    </fieldset>
  );
}
