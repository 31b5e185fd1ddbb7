"use client";
import { type ReactNode, useId } from "react";
import { useForm } from "./edit-form";
import { fieldId } from "./field-id";

interface Told {
  readonly label: string;
  /** What to write, before anything is wrong. */
  readonly hint?: string;
}

interface FrameProps extends Told {
  readonly id: string;
  readonly problems: readonly string[];
  readonly children: ReactNode;
}

/** Label above, hint and problems below, all tied to the control. */
function FieldFrame({ id, label, hint, problems, children }: FrameProps) {
  return (
    <div className="grid content-start gap-1">
      <label htmlFor={id} className="font-semibold">
        {label}
      </label>
      {children}
      {hint === undefined ? null : (
        <p id={`${id}-hint`} className="text-fine text-soft">
          {hint}
        </p>
      )}
      {problems.length === 0 ? null : (
        <p id={`${id}-error`} className="border-red border-l-4 pl-2 text-small">
          {problems.join(" ")}
        </p>
      )}
    </div>
  );
}

/** What a control of this name shows and how it is tied to its hint and problems. */
function useControl(name: string, value: string | undefined, hint: string | undefined) {
  const { tries, typed, errors } = useForm();
  const unique = useId();
  const problems = errors[name] ?? [];
  const id = fieldId(name);
  const described = [
    hint === undefined ? [] : `${id}-hint`,
    problems.length === 0 ? [] : `${id}-error`,
  ].flat();
  return {
    id,
    problems,
    // Made anew after each try: a control keeps the value it was first given, whatever its default becomes.
    key: `${unique}-${tries}`,
    shown: typed[name]?.at(-1) ?? value ?? "",
    tied: {
      ...(problems.length === 0 ? {} : { "aria-invalid": true as const }),
      ...(described.length === 0 ? {} : { "aria-describedby": described.join(" ") }),
    },
  };
}

export interface TextFieldProps extends Told {
  readonly name: string;
  /** What the record says now. */
  readonly value?: string;
  readonly required?: boolean;
  readonly maxLength?: number;
  readonly type?: "text" | "date" | "email" | "tel" | "number" | "search";
  readonly inputMode?: "text" | "decimal" | "numeric";
  readonly autoComplete?: string;
  /** Id of a datalist to choose from. */
  readonly list?: string;
}

/** One line of text. */
export function TextField({ name, label, value, hint, ...input }: TextFieldProps) {
  const { id, problems, key, shown, tied } = useControl(name, value, hint);
  return (
    <FieldFrame id={id} label={label} problems={problems} {...(hint === undefined ? {} : { hint })}>
      <input key={key} id={id} name={name} defaultValue={shown} {...tied} {...input} className="field" />
    </FieldFrame>
  );
}

export interface TextAreaProps extends Told {
  readonly name: string;
  readonly value?: string;
  readonly rows?: number;
  readonly required?: boolean;
  readonly maxLength?: number;
}

/** Several lines of text. */
export function TextArea({ name, label, value, hint, rows = 4, ...input }: TextAreaProps) {
  const { id, problems, key, shown, tied } = useControl(name, value, hint);
  return (
    <FieldFrame id={id} label={label} problems={problems} {...(hint === undefined ? {} : { hint })}>
      <textarea
        key={key}
        id={id}
        name={name}
        rows={rows}
        defaultValue={shown}
        {...tied}
        {...input}
        className="field"
      />
    </FieldFrame>
  );
}

export interface Option {
  readonly value: string;
  readonly label: string;
}

export interface ChoiceFieldProps extends Told {
  readonly name: string;
  readonly value?: string;
  readonly options: readonly Option[];
  readonly required?: boolean;
}

/** One of a list. */
export function ChoiceField({ name, label, value, hint, options, ...input }: ChoiceFieldProps) {
  const { id, problems, key, shown, tied } = useControl(name, value, hint);
  return (
    <FieldFrame id={id} label={label} problems={problems} {...(hint === undefined ? {} : { hint })}>
      <select key={key} id={id} name={name} defaultValue={shown} {...tied} {...input} className="field">
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}

export interface TickFieldProps extends Told {
  /** Sent as "yes" when ticked, "no" when not; with `of` it is one of a list `name[]`. */
  readonly name: string;
  readonly of?: string;
  readonly ticked?: boolean;
}

/** A box to tick. */
export function TickField({ name, label, hint, of, ticked = false }: TickFieldProps) {
  const { tries, typed, done } = useForm();
  const unique = useId();
  const value = of ?? "yes";
  const asRecorded = tries === 0 || done !== undefined;
  const on = asRecorded ? ticked : (typed[name] ?? []).includes(value);
  const id = of === undefined ? fieldId(name) : fieldId(`${name}-${of}`);
  return (
    <div className="grid gap-1">
      <label htmlFor={id} className="inline-flex min-h-11 cursor-pointer items-center gap-3">
        {of === undefined ? <input type="hidden" name={name} value="no" /> : null}
        <input
          key={`${unique}-${tries}`}
          id={id}
          type="checkbox"
          name={name}
          value={value}
          defaultChecked={on}
          {...(hint === undefined ? {} : { "aria-describedby": `${id}-hint` })}
          className="size-5 shrink-0 accent-ink"
        />
        {label}
      </label>
      {hint === undefined ? null : (
        <p id={`${id}-hint`} className="text-fine text-soft">
          {hint}
        </p>
      )}
    </div>
  );
}
