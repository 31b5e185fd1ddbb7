"use client";
import { type ReactNode, useId, useState } from "react";

export interface DayFieldProps {
  readonly name: string;
  readonly label: string;
  /** ISO day, or empty. */
  readonly value: string;
  readonly from: string;
  readonly to: string;
  /** A whole day between the two was entered, or the field was emptied. */
  readonly change?: (day: string) => void;
}

/**
 * A field for a day. While a year is typed figure by figure it goes through days that nobody means (0001, 0019, 0197):
 * what is typed stays in the field, and only a day between the edges counts.
 */
export function DayField({ name, label, value, from, to, change }: DayFieldProps): ReactNode {
  const id = useId();
  const [typed, setTyped] = useState({ text: value, of: value });
  const shown = typed.of === value ? typed.text : value;
  const take = (text: string) => {
    const counts = text === "" || (text >= from && text <= to);
    setTyped({ text, of: counts && change ? text : value });
    if (counts) change?.(text);
  };
  return (
    <div className="grid content-start gap-1">
      <label htmlFor={id} className="font-semibold text-small">
        {label}
      </label>
      <input
        id={id}
        type="date"
        name={name}
        min={from}
        max={to}
        value={shown}
        onChange={({ target }) => take(target.value)}
        className="field"
      />
    </div>
  );
}
