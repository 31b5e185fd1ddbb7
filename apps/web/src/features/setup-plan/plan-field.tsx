import { fieldId } from "../../components/form/field-id";

export interface PlanFieldProps {
  readonly name: string;
  readonly label: string;
  readonly hint: string;
  readonly value: string;
  readonly error?: string;
  /** One of these instead of a figure. */
  readonly options?: readonly string[];
}

/** One figure of the plan's form, which is sent by address and so keeps what was typed there. */
export function PlanField({ name, label, hint, value, error, options }: PlanFieldProps) {
  const id = fieldId(name);
  const tied = {
    id,
    name,
    defaultValue: value,
    className: "field",
    "aria-describedby": error === undefined ? `${id}-hint` : `${id}-hint ${id}-error`,
    ...(error === undefined ? {} : { "aria-invalid": true as const }),
  };
  return (
    <div className="grid content-start gap-1">
      <label htmlFor={id} className="text-small font-semibold">
        {label}
      </label>
      {options === undefined ? (
        <input {...tied} maxLength={80} autoComplete="off" />
      ) : (
        <select {...tied}>
          <option value="">not said</option>
          {options.map((one) => (
            <option key={one} value={one}>
              {one}
            </option>
          ))}
        </select>
      )}
      <p id={`${id}-hint`} className="text-fine text-soft">
        {hint}
      </p>
      {error === undefined ? null : (
        <p id={`${id}-error`} className="border-red border-l-4 pl-2 text-small">
          {error}
        </p>
      )}
    </div>
  );
}
