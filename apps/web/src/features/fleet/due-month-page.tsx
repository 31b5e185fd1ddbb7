import type { DueDay, DueMonth } from "@trunnion/api";
import { monthWeeks, sayDay, shiftMonth } from "@trunnion/register";
import { PageHead, SectionHead } from "../../components/page-head";
import { TitleBlock } from "../../components/shell/title-block";
import { sayCount } from "../../lib/car-count";
import { carPath, type DueQuery, dueMonthPath, duePath } from "../../lib/path";
import { MonthKeys } from "./month-keys";

export interface DueMonthPageProps {
  readonly page: DueMonth;
  readonly query: Pick<DueQuery, "series" | "kind">;
}

const months = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];
const weekdays = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];
const step = "inline-flex min-h-11 items-center underline underline-offset-4";

/** "December 2026" */
export function sayMonth(month: string): string {
  const [year = "", of = "1"] = month.split("-");
  return `${months[Number(of) - 1] ?? ""} ${year}`;
}

/** What falls due, as a month on the wall: days in a grid, and the same as a list below. */
export function DueMonthPage({ page, query }: DueMonthPageProps) {
  const { club, month, days } = page;
  const count = days.reduce((sum, day) => sum + day.count, 0);
  const to = (by: number) => dueMonthPath(club.slug, { ...query, month: shiftMonth(month, by) });
  return (
    <>
      <PageHead
        title={sayMonth(month)}
        back={{ href: duePath(club.slug, query), label: "What falls due" }}
        lead={count === 0 ? "Nothing falls due" : `${sayCount(count)} ${count === 1 ? "falls" : "fall"} due`}
      />
      <nav aria-label="Months" className="print:hidden flex flex-wrap gap-x-6">
        <a href={to(-1)} rel="prev" className={step}>
          <span aria-hidden>←&nbsp;</span>
          {sayMonth(shiftMonth(month, -1))}
        </a>
        <a href={dueMonthPath(club.slug, query)} className={step}>
          This month
        </a>
        <a href={to(1)} rel="next" className={step}>
          {sayMonth(shiftMonth(month, 1))}
          <span aria-hidden>&nbsp;→</span>
        </a>
        <a href={duePath(club.slug, { ...query, standing: "past" })} className={step}>
          What is past
        </a>
      </nav>
      <MonthKeys previous={to(-1)} next={to(1)}>
        <Grid page={page} query={query} />
      </MonthKeys>
      <DayList page={page} query={query} />
      <TitleBlock
        club={club.name}
        kind="Fleet"
        title={`What falls due: ${sayMonth(month)}`}
        notes={["A day is the last on which the thing is valid, as read off its label."]}
      />
    </>
  );
}

function Grid({ page, query }: DueMonthPageProps) {
  const { club, month, days, today } = page;
  const byDay = new Map(days.map((day) => [day.day, day]));
  return (
    <table className="month-grid">
      <caption className="sr-only">
        {sayMonth(month)}: how many fall due each day. Arrow keys go from day to day, Page up and Page down by
        month.
      </caption>
      <thead>
        <tr>
          {weekdays.map((weekday) => (
            <th key={weekday} scope="col" abbr={weekday}>
              <span aria-hidden>{weekday.slice(0, 2)}</span>
              <span className="sr-only">{weekday}</span>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {monthWeeks(month).map((week, index) => (
          <tr key={week.find((day) => day !== undefined) ?? index}>
            {week.map((day, weekday) => (
              <td key={weekdays[weekday]} {...(day === today ? { "aria-current": "date" as const } : {})}>
                {day === undefined ? null : (
                  <Cell club={club.slug} day={day} due={byDay.get(day)} query={query} />
                )}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface CellProps {
  readonly club: string;
  readonly day: string;
  readonly due: DueDay | undefined;
  readonly query: DueMonthPageProps["query"];
}

/** Lines a day of the grid has room for; the list below has more. */
const IN_CELL = 4;

function Cell({ club, day, due, query }: CellProps) {
  const number = Number(day.slice(8));
  if (due === undefined) return <span className="month-day">{number}</span>;
  return (
    <a
      href={duePath(club, { ...query, from: day, to: day })}
      data-day={day}
      aria-label={`${sayDay(day)}: ${sayCount(due.count)} fall due`}
      className="month-due"
    >
      <span className="month-day">{number}</span>
      <span className="month-count">{sayCount(due.count)}</span>
      <span aria-hidden className="month-items">
        {due.items.slice(0, due.count > IN_CELL ? IN_CELL - 1 : IN_CELL).map(({ id, reference, label }) => (
          <span key={id}>
            {reference} {label.toLowerCase()}
          </span>
        ))}
        {due.count > IN_CELL ? <span>and {sayCount(due.count - IN_CELL + 1)} more</span> : null}
      </span>
    </a>
  );
}

/** The same day by day, in words. */
function DayList({ page: { club, days }, query }: DueMonthPageProps) {
  if (days.length === 0) return null;
  return (
    <section aria-labelledby="days" className="pt-10">
      <SectionHead id="days" title="Day by day" />
      <ul className="grid">
        {days.map(({ day, count, items }) => (
          <li key={day} className="grid gap-1 border-hair border-b py-3 sm:grid-cols-[8rem_1fr]">
            <span className="font-semibold">{sayDay(day)}</span>
            <span className="flex flex-wrap gap-x-6">
              {items.map(({ id, reference, label }) => (
                <span key={id}>
                  <a href={carPath(club.slug, reference)}>{reference}</a>: {label.toLowerCase()}
                </span>
              ))}
              {count > items.length ? (
                <a href={duePath(club.slug, { ...query, from: day, to: day })}>
                  and {sayCount(count - items.length)} more
                </a>
              ) : null}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
