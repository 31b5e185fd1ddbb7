import type { SavedFilter } from "@trunnion/api";
import type { ReactNode } from "react";
import { Button } from "../../components/button";
import { Choice } from "../../components/field";
import { sayCount } from "../../lib/car-count";
import type { FleetQuery } from "../../lib/path";
import { filterPath } from "../../lib/path";

export interface ChoiceBarProps {
  readonly club: string;
  /** The page itself, that answers. */
  readonly action: string;
  readonly query: FleetQuery;
  readonly series: readonly { readonly slug: string; readonly name: string }[];
  readonly saved: readonly SavedFilter[];
  /** The condition in words, where there is one. */
  readonly said?: string;
  /** Changes that the condition does not know of yet. */
  readonly stale?: number;
  /** Further parts of the address that stay, and further choices. */
  readonly kept?: Readonly<Record<string, string | undefined>>;
  readonly children?: ReactNode;
}

/** Which cars a fleet page speaks of: asked with a plain GET, so that every question has an address. */
export function ChoiceBar(props: ChoiceBarProps) {
  const { club, action, query, series, saved, said, stale = 0, kept = {}, children } = props;
  const filters = saved.map(({ name }) => ({ value: name, label: name }));
  return (
    <search className="print:hidden grid gap-2 pb-6">
      <form action={action} method="get" className="flex flex-wrap items-end gap-x-4 gap-y-3">
        <Choice
          name="series"
          label="Series"
          value={query.series ?? ""}
          options={[
            { value: "", label: "Every series" },
            ...series.map(({ slug, name }) => ({ value: slug, label: name })),
          ]}
        />
        {filters.length === 0 || query.where !== undefined ? null : (
          <Choice
            name="filter"
            label="Saved filter"
            value={query.filter ?? ""}
            options={[{ value: "", label: "None" }, ...filters]}
          />
        )}
        {query.where === undefined ? null : <input type="hidden" name="where" value={query.where} />}
        {Object.entries(kept).map(([name, value]) =>
          value === undefined ? null : <input key={name} type="hidden" name={name} value={value} />,
        )}
        {children}
        <Button>Show</Button>
      </form>
      <p className="flex flex-wrap items-center gap-x-6 text-small">
        {said === undefined ? null : (
          <span className="max-w-prose">
            Cars of which <strong>{said}</strong>.
          </span>
        )}
        <a
          href={filterPath(club, query)}
          className="inline-flex min-h-11 items-center underline underline-offset-4"
        >
          {said === undefined ? "Put a condition together" : "Change the condition"}
        </a>
        {said === undefined ? null : (
          <a href={action} className="inline-flex min-h-11 items-center underline underline-offset-4">
            Take it off
          </a>
        )}
      </p>
      {stale === 0 ? null : (
        <p role="status" className="text-small">
          {sayCount(stale)} changes are not counted yet. Look again in a moment.
        </p>
      )}
    </search>
  );
}
