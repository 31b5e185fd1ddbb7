import type { RegisterList, SavedFilter } from "@trunnion/api";
import type { Characteristic, Condition } from "@trunnion/register";
import { Choice } from "../../components/field";
import { PageHead } from "../../components/page-head";
import { Pager, type PagerProps } from "../../components/pager";
import { SearchBox } from "../../components/search-box";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { sayCars, sayCount } from "../../lib/car-count";
import { type RegisterSearch, registerPath } from "../../lib/path";
import { FilterBar } from "../filter/filter-bar";
import { RegisterFacets } from "./register-facets";
import { type RegisterRow, RegisterTable } from "./register-table";
import { RegisterTools } from "./register-tools";

export interface RegisterPageProps {
  readonly club: ClubFace;
  readonly search: RegisterSearch;
  readonly series: readonly { readonly slug: string; readonly name: string }[];
  readonly saved: readonly SavedFilter[];
  /** Characteristics of the club's own, beside the built-in ones. */
  readonly own?: readonly Characteristic[];
  /** What is wrong with the condition in the address; the list is then empty. */
  readonly problem?: string;
  readonly list: {
    /** Cars that fit the search and the condition, all pages together; the whole register where nothing was asked. */
    readonly total: number;
    /** Cars of which the record does not say whether the condition holds. */
    readonly unknown: number;
    readonly condition?: { readonly is: Condition; readonly said: string };
    readonly rows: readonly RegisterRow[];
    /** How many there are of each kind; left out where nothing was counted. */
    readonly facets?: RegisterList["facets"];
    /** Words that no car has to the letter, with those that were looked for instead. */
    readonly corrections?: RegisterList["corrections"];
    /** Changes that are not in the search yet. */
    readonly stale?: number;
    /** Characteristics shown beside. */
    readonly columns?: RegisterList["columns"];
  };
  /** Addresses of other pages of the list, made with `registerPath` and its cursors. */
  readonly pages: Omit<PagerProps, "shown">;
}

/** Every car the club knows of, and how to find one. */
export function RegisterPage(props: RegisterPageProps) {
  const { club, search, series, saved, own = [], problem, list, pages } = props;
  const asked = Object.values(search).some((part) => part !== undefined && part !== "");
  const seesUnknown = search.show === "unknown" && list.condition !== undefined;
  const shown = seesUnknown ? list.unknown : list.total;
  const lead = seesUnknown
    ? `${sayCars(shown)} not known`
    : asked
      ? `${sayCars(shown)} found`
      : sayCars(shown);
  const { condition, rows } = list;
  return (
    <>
      <PageHead title="Register" lead={lead} />
      <SearchBox
        action={registerPath(club.slug)}
        label="Find a car"
        hint="Any words of the record: part of a number or mark, colour, part, modification, remark, history, caption; registrars also keepers. Typing mistakes are allowed for."
        {...(search.q === undefined ? {} : { query: search.q })}
      >
        <Choice name="series" label="Series" value={search.series ?? ""} options={seriesOptions(series)} />
        {(
          ["where", "filter", "show", "status", "decade", "verdict", "modified", "order", "col"] as const
        ).map((name) =>
          search[name] === undefined ? null : (
            <input key={name} type="hidden" name={name} value={search[name]} />
          ),
        )}
      </SearchBox>
      <FilterBar
        club={club.slug}
        search={search}
        saved={saved}
        {...(problem === undefined ? {} : { problem })}
        {...(condition === undefined
          ? {}
          : {
              narrowed: {
                condition: condition.is,
                said: condition.said,
                fitting: list.total,
                unknown: list.unknown,
              },
            })}
      />
      <Corrections list={list} />
      {list.facets === undefined ? null : (
        <RegisterFacets club={club.slug} search={search} facets={list.facets} />
      )}
      {rows.length > 0 ? (
        <>
          <RegisterTools club={club.slug} search={search} own={own} />
          <RegisterTable club={club.slug} rows={rows} columns={list.columns ?? []} />
        </>
      ) : null}
      {rows.length === 0 && problem === undefined ? <NothingFound club={club} asked={asked} /> : null}
      {rows.length === 0 ? null : (
        <Pager shown={`${sayCount(rows.length)} of ${sayCars(shown)} shown`} {...pages} />
      )}
      <TitleBlock
        club={club.name}
        kind="List"
        title="Register of cars"
        facts={[
          { label: "Cars", value: lead },
          ...(condition === undefined ? [] : [{ label: "Of which", value: condition.said }]),
        ]}
      />
    </>
  );
}

/** What was looked for in place of words nobody has, and what the search does not know yet. */
function Corrections({ list: { corrections = [], stale = 0 } }: Pick<RegisterPageProps, "list">) {
  return (
    <div role="status" className="grid gap-1 pt-3 empty:hidden">
      {corrections.map(({ word, as }) => (
        <p key={word}>
          No car has “{word}”: taken for <strong>{as.join(" or ")}</strong>.
        </p>
      ))}
      {stale === 0 ? null : (
        <p className="text-small">
          {sayCount(stale)} changes are not in the search yet. Look again in a moment.
        </p>
      )}
    </div>
  );
}

const seriesOptions = (series: RegisterPageProps["series"]) => [
  { value: "", label: "Every series" },
  ...series.map(({ slug, name }) => ({ value: slug, label: name })),
];

function NothingFound({ club, asked }: { readonly club: ClubFace; readonly asked: boolean }) {
  if (!asked) {
    return (
      <p className="max-w-prose pt-8">
        No car is on this register yet. Bring one in with{" "}
        <code>npm run -s trunnion -- import register.csv --club {club.slug}</code>.
      </p>
    );
  }
  return (
    <p className="max-w-prose pt-8">
      No car fits. Try fewer letters of the number, or <a href={registerPath(club.slug)}>look at every car</a>
      .
    </p>
  );
}
