import type { ReactNode } from "react";

export interface PageHeadProps {
  readonly title: string;
  /** Where one came from: "Register". */
  readonly back?: { readonly href: string; readonly label: string };
  /** Beside the title: the car's plate. */
  readonly plate?: ReactNode;
  /** One line under the title: how many, when, where. */
  readonly lead?: ReactNode;
  /** The one action that matters here, or the search. */
  readonly children?: ReactNode;
}

export function PageHead({ title, back, plate, lead, children }: PageHeadProps) {
  return (
    <header className="flex flex-wrap items-end justify-between gap-x-10 gap-y-4 pb-5">
      <div className="grid gap-1">
        {back === undefined ? null : (
          <p className="print:hidden pb-1 text-small">
            <a href={back.href}>
              <span aria-hidden>← </span>
              {back.label}
            </a>
          </p>
        )}
        <div className="flex flex-wrap items-center gap-x-8 gap-y-4">
          {plate}
          <div className="grid gap-1">
            <h1 className="text-title">{title}</h1>
            {lead === undefined ? null : <div className="text-soft">{lead}</div>}
          </div>
        </div>
      </div>
      {children}
    </header>
  );
}

export interface SectionHeadProps {
  readonly id?: string;
  readonly title: string;
  readonly children?: ReactNode;
}

/** A heading on a rule, as the blocks of a drawing sheet are set off. */
export function SectionHead({ id, title, children }: SectionHeadProps) {
  return (
    <div className="flex flex-wrap items-baseline justify-between gap-x-6 border-ink border-t-2 pt-2 pb-2">
      <h2 {...(id === undefined ? {} : { id })} className="text-head">
        {title}
      </h2>
      {children}
    </div>
  );
}
