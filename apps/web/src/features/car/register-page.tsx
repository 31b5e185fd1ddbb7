import type { SavedFilter } from "@trunnion/api";
import type { Condition } from "@trunnion/register";
import { Choice } from "../../components/field";
import { PageHead } from "../../components/page-head";
import { Pager, type PagerProps } from "../../components/pager";
import { SearchBox } from "../../components/search-box";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { sayCars, sayCount } from "../../lib/car-count";
import { type RegisterSearch, registerPath } from "../../lib/path";
import { FilterBar } from "../filter/filter-bar";
import { type RegisterRow, RegisterTable } from "./register-table";

export interface RegisterPageProps {
  readonly club: ClubFace;
  readonly search: RegisterSearch;
  readonly series: readonly { readonly slug: string; readonly name: string }[];
  readonly saved: readonly SavedFilter[];
  /** What is wrong with the condition in the address; the list is then empty. */
  readonly problem?: string;
  readonly list: {
    /** Cars that fit the search and the condition, all pages together; the whole register where nothing was asked. */
    readonly total: number;
    /** Cars of which the record does not say whether the condition holds. */
    readonly unknown: number;
    readonly condition?: { readonly is: Condition; readonly said: string };
    readonly rows: readonly RegisterRow[];
  };
  /** Addresses of other pages of the list, made with `registerPath` and its cursors. */
  readonly pages: Omit<PagerProps, "shown">;
}

/** Every car the club knows of, and how to find one. */
export function RegisterPage({ club, search, series, saved, problem, list, pages }: RegisterPageProps) {
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
        hint="By part of any number or mark, colour, year of build or a word of the remarks; registrars also by keeper."
        {...(search.q === undefined ? {} : { query: search.q })}
      >
        <Choice name="series" label="Series" value={search.series ?? ""} options={seriesOptions(series)} />
        {(["where", "filter", "show"] as const).map((name) =>
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
      {rows.length > 0 ? <RegisterTable club={club.slug} rows={rows} /> : null}
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
