import type { SavedFilter } from "@trunnion/api";
import type { Condition } from "@trunnion/register";
import { EditForm } from "../../components/form/edit-form";
import { TextField, TickField } from "../../components/form/form-field";
import { Notice } from "../../components/notice";
import { sayCars, sayCount } from "../../lib/car-count";
import {
  type FleetQuery,
  filterPath,
  prevalencePath,
  type RegisterSearch,
  registerPath,
  savedFiltersPath,
} from "../../lib/path";
import { saveFilter } from "./filter-action";
import { pathWithout } from "./part-path";

/** A condition the list is narrowed by, as the page tells it. */
export interface Narrowed {
  readonly condition: Condition;
  /** In plain words. */
  readonly said: string;
  /** What must hold together, each in few words. */
  readonly parts: readonly { readonly is: Condition; readonly said: string }[];
  /** What of it no saved filter says. */
  readonly beside?: Condition;
  /** Cars that fit, and those of which the record does not say. */
  readonly fitting: number;
  readonly unknown: number;
}

export interface FilterBarProps {
  readonly club: string;
  readonly search: RegisterSearch;
  readonly saved: readonly SavedFilter[];
  readonly narrowed?: Narrowed;
  /** What is wrong with the condition in the address. */
  readonly problem?: string;
}

const link = "inline-flex min-h-11 items-center";

/** The same cars as the fleet's pages ask for them: without the search in words. */
function fleetOf({ where, filter }: RegisterSearch): FleetQuery {
  return {
    ...(where === undefined ? {} : { where }),
    ...(filter === undefined ? {} : { filter }),
  };
}

/** What the list is narrowed by, in words, with the ways on: change, save, take off, see what is not known. */
export function FilterBar(props: FilterBarProps) {
  const { club, search, saved, narrowed, problem } = props;
  const { where: _where, filter: _filter, series: _series, show: _show, ...kept } = search;
  return (
    <section aria-label="Filter" className="grid gap-2 pt-5">
      {problem === undefined ? null : (
        <Notice
          text={{
            what: `The filter in this address cannot be used: ${problem}.`,
            remedy:
              "No car is shown, so that none is taken for one that fits. Put the condition together again, or take it off.",
          }}
        />
      )}
      {narrowed === undefined ? null : <Told club={club} search={search} narrowed={narrowed} />}
      <p className="print:hidden flex flex-wrap gap-x-6">
        {narrowed === undefined && problem === undefined ? (
          <a href={filterPath(club, kept)} className={link}>
            Filter by what is recorded
          </a>
        ) : (
          <>
            <a href={filterPath(club, search)} className={link}>
              Change the condition
            </a>
            <a href={registerPath(club, kept)} className={link}>
              Take it off
            </a>
            {narrowed === undefined || search.q !== undefined ? null : (
              <a href={prevalencePath(club, fleetOf(search))} className={link}>
                What has been changed on these cars
              </a>
            )}
          </>
        )}
        {saved.slice(0, 6).map(({ id, name }) => (
          <a
            key={id}
            href={registerPath(club, { ...kept, filter: name })}
            className={link}
            {...(name === search.filter ? { "aria-current": "true" as const } : {})}
          >
            {name}
          </a>
        ))}
        {saved.length === 0 ? null : (
          <a href={savedFiltersPath(club)} className={link}>
            Saved filters
          </a>
        )}
      </p>
      {narrowed === undefined ? null : (
        <SaveForm club={club} kept={kept} narrowed={narrowed} search={search} />
      )}
    </section>
  );
}

type ToldProps = Pick<FilterBarProps, "club" | "search"> & { readonly narrowed: Narrowed };

function Told({ club, search, narrowed }: ToldProps) {
  const { said, fitting, unknown } = narrowed;
  const { show: _show, ...fits } = search;
  const seesUnknown = search.show === "unknown";
  return (
    <div className="grid max-w-prose gap-1 border-ink border-l-4 pl-4">
      <p>
        {seesUnknown ? "Cars of which the record does not say whether" : "Cars of which"}{" "}
        <strong>{said}</strong>.
      </p>
      <Parts club={club} search={search} narrowed={narrowed} />
      <p className="text-small">
        {seesUnknown ? (
          <>
            Unknown is not a no: look at these cars.{" "}
            <a href={registerPath(club, fits)}>{sayCars(fitting)} fit for certain</a>.
          </>
        ) : unknown === 0 ? (
          "Of every other car it is known that it does not."
        ) : (
          <>
            Of {sayCount(unknown)} more {unknown === 1 ? "car" : "cars"} the record does not say.{" "}
            <a href={registerPath(club, { ...fits, show: "unknown" })}>See {unknown === 1 ? "it" : "them"}</a>
            .
          </>
        )}
      </p>
    </div>
  );
}

/** What must hold together, word by word, each to be taken off. */
function Parts({ club, search, narrowed }: ToldProps) {
  const { condition, beside, parts } = narrowed;
  const narrowing = { club, search, condition, ...(beside === undefined ? {} : { beside }) };
  return (
    <ul aria-label="Narrowed by" className="print:hidden flex flex-wrap gap-x-4 text-small">
      {parts.map(({ is, said }) => (
        <li key={said}>
          <a href={pathWithout(narrowing, is)} data-live={`narrowed ${said}`} className={link}>
            <span className="sr-only">Take off: </span>
            {said}
            <span aria-hidden className="pl-1.5">
              ×
            </span>
          </a>
        </li>
      ))}
    </ul>
  );
}

interface SaveFormProps extends Pick<FilterBarProps, "club" | "search"> {
  readonly kept: RegisterSearch;
  readonly narrowed: Narrowed;
}

function SaveForm({ club, kept, narrowed, search }: SaveFormProps) {
  return (
    <details className="print:hidden">
      <summary className={`${link} underline`}>Save this condition</summary>
      <div className="py-3">
        <EditForm action={saveFilter.bind(null, club, narrowed.condition, kept)} submit="Save the filter">
          <TextField
            name="name"
            label="Name"
            value={search.filter ?? ""}
            maxLength={60}
            hint="The condition is kept, not the words looked for."
          />
          <TickField name="shared" label="Share it with the club" />
          <TickField
            name="replace"
            label="Replace my filter of this name"
            ticked={search.filter !== undefined}
          />
        </EditForm>
      </div>
    </details>
  );
}
