import { Choice } from "../../components/field";
import { PageHead } from "../../components/page-head";
import { Pager, type PagerProps } from "../../components/pager";
import { SearchBox } from "../../components/search-box";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { registerPath } from "../../lib/path";
import { type RegisterRow, RegisterTable } from "./register-table";

export interface RegisterPageProps {
  readonly club: ClubFace;
  /** Cars that fit the search, all pages together; the whole register where nothing was asked. */
  readonly found: number;
  readonly search: { readonly q?: string; readonly series?: string };
  readonly series: readonly { readonly slug: string; readonly name: string }[];
  readonly rows: readonly RegisterRow[];
  /** Addresses of other pages of the list, made with `registerPath` and its cursors. */
  readonly pages: Omit<PagerProps, "shown">;
}

const count = new Intl.NumberFormat("en-GB");
export const sayCars = (cars: number): string => (cars === 1 ? "1 car" : `${count.format(cars)} cars`);

/** Every car the club knows of, and how to find one. */
export function RegisterPage({ club, found, search, series, rows, pages }: RegisterPageProps) {
  const asked = Object.values(search).some((part) => part !== undefined && part !== "");
  const lead = asked ? `${sayCars(found)} found` : sayCars(found);
  return (
    <>
      <PageHead title="Register" lead={lead} />
      <SearchBox
        action={registerPath(club.slug)}
        label="Find a car"
        hint="By chassis, engine or registration number, or colour."
        {...(search.q === undefined ? {} : { query: search.q })}
      >
        <Choice name="series" label="Series" value={search.series ?? ""} options={seriesOptions(series)} />
      </SearchBox>
      {rows.length === 0 ? (
        <NothingFound club={club} asked={asked} />
      ) : (
        <RegisterTable club={club.slug} rows={rows} />
      )}
      {rows.length === 0 ? null : (
        <Pager shown={`${count.format(rows.length)} of ${sayCars(found)} shown`} {...pages} />
      )}
      <TitleBlock
        club={club.name}
        kind="List"
        title="Register of cars"
        facts={[{ label: "Cars", value: lead }]}
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
