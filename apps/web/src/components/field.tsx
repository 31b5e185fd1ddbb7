import { useId } from "react";

export interface FieldProps {
  readonly name: string;
  readonly label: string;
  readonly type?: "text" | "email" | "password" | "search";
  readonly autoComplete?: string;
  readonly value?: string;
  readonly required?: boolean;
  readonly minLength?: number;
  readonly readOnly?: boolean;
  /** As small a label as a choice has, beside which it stands. */
  readonly small?: boolean;
  /** What to write, before anything is wrong. */
  readonly hint?: string;
  /** What is wrong with what was written, and what would be right. */
  readonly error?: string;
}

/** One field: label above, hint and error below and tied to it. */
export function Field({ label, hint, error, value, type = "text", small = false, ...input }: FieldProps) {
  const id = useId();
  const described = [hint === undefined ? [] : `${id}-hint`, error === undefined ? [] : `${id}-error`].flat();
  return (
    <div className="grid gap-1">
      <label htmlFor={id} className={small ? "font-semibold text-small" : "font-semibold"}>
        {label}
      </label>
      <input
        id={id}
        type={type}
        defaultValue={value}
        {...(error === undefined ? {} : { "aria-invalid": true })}
        {...(described.length === 0 ? {} : { "aria-describedby": described.join(" ") })}
        {...input}
        className="field"
      />
      {hint === undefined ? null : (
        <p id={`${id}-hint`} className="text-fine text-soft">
          {hint}
        </p>
      )}
      {error === undefined ? null : (
        <p id={`${id}-error`} className="border-red border-l-4 pl-2 text-small">
          {error}
        </p>
      )}
    </div>
  );
}

export interface ChoiceProps {
  readonly name: string;
  readonly label: string;
  readonly value?: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
}

/** One of a list; the first option stands for "any". */
export function Choice({ name, label, value, options }: ChoiceProps) {
  const id = useId();
  return (
    <div className="grid gap-1">
      <label htmlFor={id} className="font-semibold text-small">
        {label}
      </label>
      <select id={id} name={name} defaultValue={value} className="field">
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </div>
  );
}
