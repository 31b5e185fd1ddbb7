interface Told {
  readonly name: string;
  readonly label: string;
  readonly hint: string;
}

/** One line of text of a form that no server action takes. */
export function PlainField({
  name,
  label,
  hint,
  value,
  maxLength,
}: Told & { readonly value: string; readonly maxLength: number }) {
  const id = `evidence-${name}`;
  return (
    <div className="grid content-start gap-1">
      <label htmlFor={id} className="font-semibold">
        {label}
      </label>
      <input
        id={id}
        name={name}
        defaultValue={value}
        maxLength={maxLength}
        autoComplete="off"
        aria-describedby={`${id}-hint`}
        className="field"
      />
      <p id={`${id}-hint`} className="text-fine text-soft">
        {hint}
      </p>
    </div>
  );
}

/** A box to tick, sent as "yes". */
export function PlainTick({ name, label, hint, ticked }: Told & { readonly ticked: boolean }) {
  const id = `evidence-${name}`;
  return (
    <div className="grid gap-1">
      <label htmlFor={id} className="inline-flex min-h-11 cursor-pointer items-center gap-3">
        <input
          id={id}
          type="checkbox"
          name={name}
          value="yes"
          defaultChecked={ticked}
          aria-describedby={`${id}-hint`}
          className="size-5 shrink-0 accent-ink"
        />
        {label}
      </label>
      <p id={`${id}-hint`} className="text-fine text-soft">
        {hint}
      </p>
    </div>
  );
}
