import type { RegisterList, SavedFilter } from "@trunnion/api";
import { builtInBook, type Characteristic, type Condition, characteristicBook } from "@trunnion/register";
import { Choice } from "../../components/field";
import { PageHead } from "../../components/page-head";
import { Pager, type PagerProps } from "../../components/pager";
import { SearchBox } from "../../components/search-box";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { sayCars, sayCount } from "../../lib/car-count";
import { type RegisterSearch, registerPath } from "../../lib/path";
import type { ListView } from "../../lib/register-search";
import { FilterBar } from "../filter/filter-bar";
import { type CarCard, CarCards } from "./car-cards";
import { foundEndId, foundId } from "./found-part";
import { LiveSearch } from "./live-search";
import { NamedNote } from "./named-note";
import { RegisterFacets } from "./register-facets";
import { type RegisterRow, RegisterTable } from "./register-table";
import { RegisterTools } from "./register-tools";
import { NothingFound, PastTheEnd, SearchNote } from "./search-note";
import { TickedCars } from "./tick-box";

export interface RegisterPageProps {
  readonly club: ClubFace;
  readonly search: RegisterSearch;
  /** As what the list is looked at. */
  readonly view: ListView;
  /** What changes with what is looked for alone, as the page's own script asks for it. */
  readonly only?: boolean;
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
    readonly condition?: NonNullable<RegisterList["condition"]>;
    /** What of the condition no saved filter says. */
    readonly beside?: Condition;
    readonly rows: readonly (RegisterRow & CarCard)[];
    /** How many there are of each kind; left out where nothing was counted. */
    readonly facets?: RegisterList["facets"];
    /** Words that no car has to the letter, with those that were looked for instead. */
    readonly corrections?: RegisterList["corrections"];
    /** Words taken for a series, words passed over, and what comes nearest where nothing fits. */
    readonly named?: RegisterList["named"];
    readonly passedOver?: RegisterList["passedOver"];
    readonly nearest?: RegisterList["nearest"];
    /** Changes that are not in the search yet. */
    readonly stale?: number;
    /** Characteristics shown beside. */
    readonly columns?: RegisterList["columns"];
  };
  /** Addresses of other pages of the list, made with `registerPath` and its cursors. */
  readonly pages: Omit<PagerProps, "shown">;
}

/** "4 cars found", "412 cars". */
function leadOf({ search, list }: RegisterPageProps): string {
  if (search.show === "unknown" && list.condition !== undefined) return `${sayCars(list.unknown)} not known`;
  return isAsked(search) ? `${sayCars(list.total)} found` : sayCars(list.total);
}

/** Whether anything narrows the list; order, columns and view do not. */
const isAsked = ({ q, series, where, filter }: RegisterSearch) =>
  [q, series, where, filter].some((part) => part !== undefined);

/** Every car the club knows of, and how to find one: the list and its counts follow as one types. */
export function RegisterPage(props: RegisterPageProps) {
  if (props.only)
    return (
      <>
        <div id={foundId}>
          <FoundCars {...props} />
        </div>
        <i id={foundEndId} hidden />
      </>
    );
  return (
    <>
      <PageHead title="Register" />
      <LiveSearch form={<SearchForm {...props} />} told={leadOf(props)}>
        <FoundCars {...props} />
      </LiveSearch>
    </>
  );
}

const formId = "find-cars";

const bookOf = (own: readonly Characteristic[]) => (own.length === 0 ? builtInBook : characteristicBook(own));

function SearchForm({ club, search, own = [] }: RegisterPageProps) {
  return (
    <SearchBox
      action={registerPath(club.slug)}
      formId={formId}
      label="Find a car"
      hint="Any words of the record: part of a number or mark, series, colour, part, modification, remark, history, caption; registrars also keepers. Typing mistakes are allowed for; words in quotation marks stand together."
      {...(search.q === undefined ? {} : { query: search.q })}
    >
      <Choice
        name="with"
        label="Show beside"
        value=""
        options={[
          { value: "", label: "Nothing more" },
          { value: "car.lookedAt", label: "Last looked at" },
          { value: "car.keeper", label: "Keeper, for registrars and fleet managers" },
          ...bookOf(own).all.map(({ key, label }) => ({ value: key, label })),
        ]}
      />
    </SearchBox>
  );
}

/** What stays as it is while one looks for other words: fields of the form above, among what the list brings. */
function StayingFields({ search }: Pick<RegisterPageProps, "search">) {
  const { q: _q, ...staying } = search;
  return Object.entries(staying).map(([name, value]) => (
    <input key={name} type="hidden" form={formId} name={name} value={value} />
  ));
}

function FoundRows({ club, search, list: { rows, columns = [] }, view }: RegisterPageProps) {
  if (rows.length === 0) return null;
  if (view === "cards") return <CarCards club={club.slug} rows={rows} columns={columns} />;
  return <RegisterTable club={club.slug} search={search} rows={rows} columns={columns} />;
}

/** All that changes with what is looked for. */
function FoundCars(props: RegisterPageProps) {
  const { club, search, saved, problem, list, pages, view, own = [] } = props;
  const { condition, beside, rows } = list;
  const narrowing = {
    club: club.slug,
    search,
    ...(condition === undefined ? {} : { condition: condition.is }),
    ...(beside === undefined ? {} : { beside }),
  };
  const shown = search.show === "unknown" && condition !== undefined ? list.unknown : list.total;
  return (
    <div data-parts data-asked={search.q ?? ""} data-told={leadOf(props)}>
      <StayingFields search={search} />
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
                parts: condition.parts,
                ...(beside === undefined ? {} : { beside }),
                fitting: list.total,
                unknown: list.unknown,
              },
            })}
      />
      <SearchNote list={list} />
      <NamedNote club={club.slug} words={search.q} book={bookOf(own)} />
      <div data-parts className="found-body">
        {list.facets === undefined ? null : <RegisterFacets narrowing={narrowing} facets={list.facets} />}
        <div data-parts className="min-w-0">
          {rows.length > 0 ? (
            <RegisterTools
              club={club.slug}
              search={search}
              columns={list.columns ?? []}
              view={view}
              references={shown === rows.length ? rows.map(({ reference }) => reference) : []}
            />
          ) : null}
          <TickedCars club={club.slug} few={rows.length < 2} />
          <FoundRows {...props} />
          {rows.length === 0 && problem === undefined && shown > 0 ? (
            <PastTheEnd {...(pages.first === undefined ? {} : { first: pages.first })} />
          ) : null}
          {rows.length === 0 && problem === undefined && shown === 0 ? (
            <NothingFound club={club} search={search} list={list} asked={isAsked(search)} />
          ) : null}
          {rows.length === 0 ? null : (
            <Pager shown={`${sayCount(rows.length)} of ${sayCars(shown)} shown`} {...pages} />
          )}
        </div>
      </div>
      <TitleBlock
        club={club.name}
        kind="List"
        title="Register of cars"
        facts={[
          { label: "Cars", value: leadOf(props) },
          ...(condition === undefined ? [] : [{ label: "Of which", value: condition.said }]),
        ]}
      />
    </div>
  );
}
