import { type ReactNode, useId } from "react";
import { Button } from "./button";

export interface SearchBoxProps {
  /** Page that answers. */
  readonly action: string;
  readonly label: string;
  readonly hint?: string;
  readonly query?: string;
  readonly button?: string;
  /** For fields of the form that stand elsewhere on the page. */
  readonly formId?: string;
  /** Further narrowing: choices that go with the search. */
  readonly children?: ReactNode;
}

/** Asks with a plain GET, so that every search has an address that can be kept and sent. */
export function SearchBox({ action, label, hint, query, button = "Find", formId, children }: SearchBoxProps) {
  const id = useId();
  return (
    <search className="print:hidden">
      <form
        action={action}
        method="get"
        {...(formId === undefined ? {} : { id: formId })}
        className="flex flex-wrap items-end gap-x-4 gap-y-3"
      >
        <div className="grid min-w-0 grow basis-72 gap-1">
          <label htmlFor={id} className="font-semibold text-small">
            {label}
          </label>
          <input
            id={id}
            name="q"
            type="search"
            defaultValue={query}
            maxLength={200}
            autoComplete="off"
            spellCheck={false}
            {...(hint === undefined ? {} : { "aria-describedby": `${id}-hint` })}
            className="field"
          />
        </div>
        {children}
        <Button>{button}</Button>
        {hint === undefined ? null : (
          <p id={`${id}-hint`} className="-mt-1 basis-full text-fine text-soft">
            {hint}
          </p>
        )}
      </form>
    </search>
  );
}
