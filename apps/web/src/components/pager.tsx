export interface PagerProps {
  /** "50 of 412 cars". */
  readonly shown: string;
  /** Back to the beginning, where one is past it and earlier pages have no cursor of their own. */
  readonly first?: string;
  readonly previous?: string;
  readonly next?: string;
}

const step = "inline-flex min-h-12 min-w-24 items-center sm:min-h-11";

/** Earlier and later, by cursor: no page number that is wrong once somebody has added a car. */
export function Pager({ shown, first, previous, next }: PagerProps) {
  if ([first, previous, next].every((href) => href === undefined))
    return <p className="pt-3 text-small text-soft">{shown}</p>;
  return (
    <nav
      aria-label="More of the list"
      className="flex flex-wrap items-center justify-between gap-4 pt-2 text-small"
    >
      <span className="text-soft">{shown}</span>
      <span className="print:hidden flex gap-4">
        {first === undefined ? null : (
          <a href={first} className={step}>
            From the beginning
          </a>
        )}
        {previous === undefined ? null : (
          <a href={previous} rel="prev" className={step}>
            <span aria-hidden>←&nbsp;</span>Previous
          </a>
        )}
        {next === undefined ? null : (
          <a href={next} rel="next" className={`${step} justify-end`}>
            Next<span aria-hidden>&nbsp;→</span>
          </a>
        )}
      </span>
    </nav>
  );
}
