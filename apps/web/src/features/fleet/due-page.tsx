import type { DueCount, DuePage } from "@trunnion/api";
import { daysBetween, dueStandings, dueStandingWords, sayDay } from "@trunnion/register";
import { Button } from "../../components/button";
import { Choice } from "../../components/field";
import { PageHead, SectionHead } from "../../components/page-head";
import { Pager } from "../../components/pager";
import { SmallPlate } from "../../components/plate";
import { TitleBlock } from "../../components/shell/title-block";
import { sayCount } from "../../lib/car-count";
import { carPath, type DueQuery, dueMonthPath, duePath, feedsPath, fleetPath } from "../../lib/path";

export interface DueListPageProps {
  readonly page: DuePage;
  readonly query: DueQuery;
  /** Past the first page. */
  readonly past: boolean;
}

const link = "inline-flex min-h-11 items-center underline underline-offset-4";

/** What falls due across the fleet, the longest past first. */
export function DueListPage({ page, query, past }: DueListPageProps) {
  const { club, items, next, counts } = page;
  const { series, kind } = query;
  const kept = { ...(series === undefined ? {} : { series }), ...(kind === undefined ? {} : { kind }) };
  return (
    <>
      <PageHead
        title="What falls due"
        back={{ href: fleetPath(club.slug), label: "Fleet" }}
        lead={`As of ${sayDay(page.today)}`}
      />
      <DueForm page={page} query={query} />
      <p className="print:hidden flex flex-wrap gap-x-6 pb-4">
        <a href={dueMonthPath(club.slug, kept)} className={link}>
          As a calendar
        </a>
        <a href={feedsPath(club.slug)} className={link}>
          In your own calendar program
        </a>
      </p>
      <div className="grid grid-cols-1 gap-10">
        <Counts club={club.slug} counts={counts} query={query} />
        <section aria-labelledby="items">
          <SectionHead id="items" title="Item by item" />
          {items.length === 0 ? (
            <p className="max-w-prose pt-2">There is nothing of the kind.</p>
          ) : (
            <Items page={page} />
          )}
          {items.length === 0 ? null : (
            <Pager
              shown={`${sayCount(items.length)} shown`}
              {...(past ? { first: duePath(club.slug, query) } : {})}
              {...(next === undefined
                ? {}
                : { next: duePath(club.slug, { ...query, after: next.id, at: next.day }) })}
            />
          )}
        </section>
      </div>
      <TitleBlock
        club={club.name}
        kind="Fleet"
        title="What falls due"
        facts={[{ label: "As of", value: sayDay(page.today) }]}
        notes={[
          "A day is the last on which the thing is valid, as read off its label. Cars dismantled or destroyed are left out.",
          "A date on a label does not say that the thing is sound: look at it as well.",
        ]}
      />
    </>
  );
}

function DueForm({ page: { club, series, kinds }, query }: Pick<DueListPageProps, "page" | "query">) {
  return (
    <search className="print:hidden pb-2">
      <form action={duePath(club.slug)} method="get" className="flex flex-wrap items-end gap-x-4 gap-y-3">
        <Choice
          name="kind"
          label="What"
          value={query.kind ?? ""}
          options={[
            { value: "", label: "Everything dated" },
            ...kinds.map(({ kind, label }) => ({ value: kind, label })),
          ]}
        />
        <Choice
          name="standing"
          label="When"
          value={query.standing ?? ""}
          options={[
            { value: "", label: "Any day" },
            ...dueStandings.map((standing) => ({ value: standing, label: dueStandingWords[standing] })),
          ]}
        />
        <Choice
          name="series"
          label="Series"
          value={query.series ?? ""}
          options={[
            { value: "", label: "Every series" },
            ...series.map(({ slug, name }) => ({ value: slug, label: name })),
          ]}
        />
        <Button>Show</Button>
      </form>
    </search>
  );
}

interface CountsProps {
  readonly club: string;
  readonly counts: readonly DueCount[];
  readonly query: DueQuery;
}

/** How many of each kind stand how; each number leads to its list. */
function Counts({ club, counts, query: { series } }: CountsProps) {
  if (counts.length === 0) return null;
  return (
    <table className="plain-table due-counts">
      <caption className="sr-only">How many of each kind, by when they fall due</caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          {dueStandings.map((standing) => (
            <th key={standing} scope="col" className="num">
              {dueStandingWords[standing]}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {counts.map(({ kind, label, counts: of }) => (
          <tr key={kind}>
            <th scope="row" className="font-normal">
              {label}
            </th>
            {dueStandings.map((standing) => (
              <td key={standing} className="num">
                {of[standing] === 0 ? (
                  <span className="text-soft">none</span>
                ) : (
                  <a
                    href={duePath(club, { kind, standing, ...(series === undefined ? {} : { series }) })}
                    aria-label={`${label}, ${dueStandingWords[standing]}: ${of[standing]}`}
                    className={`${link} ${standing === "past" ? "font-semibold" : ""}`}
                  >
                    {sayCount(of[standing])}
                  </a>
                )}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** "274 days past", "today", "in 12 days". */
export function sayAway(day: string, today: string): string {
  const away = daysBetween(today, day);
  const days = (count: number) => (count === 1 ? "1 day" : `${sayCount(count)} days`);
  if (away === 0) return "today is the last";
  return away < 0 ? `${days(-away)} past` : `in ${days(away)}`;
}

function Items({ page: { club, items, today } }: { readonly page: DuePage }) {
  return (
    <table className="stack-table">
      <caption className="sr-only">What falls due, the longest past first</caption>
      <thead>
        <tr>
          <th scope="col">Car</th>
          <th scope="col">Series</th>
          <th scope="col">What</th>
          <th scope="col">Last day</th>
          <th scope="col">Stands</th>
        </tr>
      </thead>
      <tbody>
        {items.map(({ id, reference, chassis, series, label, day, standing }) => (
          <tr key={id}>
            <th scope="row">
              <SmallPlate chassis={chassis} href={carPath(club.slug, reference)} />
            </th>
            <td className="run">{series}</td>
            <td className="run">{label}</td>
            <td className="run">
              {day === undefined ? <span className="text-soft">not recorded</span> : sayDay(day)}
            </td>
            <td className={`run ${standing === "past" ? "font-semibold" : ""}`}>
              {day === undefined ? dueStandingWords[standing] : sayAway(day, today)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
