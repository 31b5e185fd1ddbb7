import type { Survival } from "@trunnion/api";
import { type CarStatus, carStatuses, carStatusWords } from "@trunnion/register";
import { Button } from "../../components/button";
import { Choice } from "../../components/field";
import { PageHead, SectionHead } from "../../components/page-head";
import { Legend } from "../../components/plot/hatch";
import { SharePlot } from "../../components/plot/year-plot";
import { TitleBlock } from "../../components/shell/title-block";
import { sayCars, sayCount } from "../../lib/car-count";
import { fleetPath, registerPath, survivalPath } from "../../lib/path";
import { ThinSection } from "./thin-section";

/** What was built, what is known of, what is in use; and what to ask next. */
export function SurvivalPage({ page }: { readonly page: Survival }) {
  const { club, series } = page;
  const cars = series.reduce((sum, one) => sum + one.cars, 0);
  return (
    <>
      <PageHead
        title="What is left of them"
        back={{ href: fleetPath(club.slug), label: "Fleet" }}
        lead={`${sayCars(cars)} on the register`}
      />
      <div className="grid grid-cols-1 gap-12">
        <SeriesSection page={page} />
        <SeriesForm page={page} />
        <MonthSection page={page} />
        <CompletenessSection page={page} />
        <ThinSection page={page} />
      </div>
      <TitleBlock
        club={club.name}
        kind="Fleet"
        title="What is left of them"
        facts={[{ label: "Cars", value: sayCars(cars) }]}
        notes={[
          "Known of are different numbers: two records that claim one number are one. A number that is not known of may be lost, or only not found yet.",
        ]}
      />
    </>
  );
}

function SeriesForm({ page: { club, allSeries, chosenSeries } }: { readonly page: Survival }) {
  return (
    <search className="print:hidden">
      <form action={survivalPath(club.slug)} method="get" className="flex flex-wrap items-end gap-4">
        <Choice
          name="series"
          label="Months and thin records of"
          value={chosenSeries ?? ""}
          options={[
            { value: "", label: "Every series" },
            ...allSeries.map(({ slug, name }) => ({ value: slug, label: name })),
          ]}
        />
        <Button>Show</Button>
      </form>
    </search>
  );
}

/** "33 %" of what was built is known of; nothing where it is not known how many were built. */
export function sayKnown({ numbers, built }: { readonly numbers: number; readonly built?: number }): string {
  return built === undefined || built === 0 ? "" : `${Math.round((100 * numbers) / built)} %`;
}

const others: readonly CarStatus[] = carStatuses.filter((status) => status !== "inUse");

function SeriesSection({ page: { club, series } }: { readonly page: Survival }) {
  const told = others.filter((status) => series.some(({ statuses }) => (statuses[status] ?? 0) > 0));
  return (
    <section aria-labelledby="series">
      <SectionHead id="series" title="By series" />
      <table className="stack-table">
        <caption className="sr-only">
          Numbers built, known of, and what has become of the cars, by series
        </caption>
        <thead>
          <tr>
            <th scope="col">Series</th>
            <th scope="col" className="num">
              Built
            </th>
            <th scope="col" className="num">
              Numbers known of
            </th>
            <th scope="col" className="num">
              Share
            </th>
            <th scope="col" className="num">
              Records
            </th>
            <th scope="col" className="num">
              In use
            </th>
            {told.map((status) => (
              <th key={status} scope="col" className="num">
                {carStatusWords[status]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {series.map((one) => (
            <tr key={one.name}>
              <th scope="row" className="whitespace-nowrap font-normal">
                {one.slug === undefined ? (
                  one.name
                ) : (
                  <a href={registerPath(club.slug, { series: one.slug })}>{one.name}</a>
                )}
              </th>
              <td className="run num" data-label="Built">
                {one.built === undefined || one.built === 0 ? (
                  <span className="text-soft">not known</span>
                ) : (
                  sayCount(one.built)
                )}
              </td>
              <td className="run num" data-label="Numbers known of">
                {sayCount(one.numbers)}
              </td>
              <td className="run num" data-label="Share">
                {sayKnown(one)}
              </td>
              <td className="run num" data-label="Records">
                {sayCount(one.cars)}
              </td>
              <td className="run num" data-label="In use">
                {sayCount(one.statuses.inUse ?? 0)}
              </td>
              {told.map((status) => (
                <td key={status} className="run num" data-label={carStatusWords[status]}>
                  {sayCount(one.statuses[status] ?? 0)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

const parts = [
  { key: "inUse", hatch: "lines", label: "In use" },
  { key: "resting", hatch: "dots", label: "Laid up or under restoration" },
  { key: "gone", hatch: "ink", label: "Dismantled or destroyed" },
  { key: "unknown", hatch: "open", label: "Not known, lost from sight or disputed" },
] as const;

/** Most bars of which the hatching can be told apart. */
const BARS = 48;

/** Months as they are, or where they are too many to be told apart by quarter of a year: "1971, quarter 2". */
export function spansOf(months: Survival["months"]): {
  readonly months: number;
  readonly spans: Survival["months"];
} {
  if (months.length <= BARS) return { months: 1, spans: months };
  const quarters = new Map<string, Survival["months"][number]>();
  for (const one of months) {
    const [year = "", of = "1"] = one.month.split("-");
    const month = `${year}, quarter ${Math.ceil(Number(of) / 3)}`;
    const before = quarters.get(month);
    const sum = (part: "cars" | "inUse" | "resting" | "gone" | "unknown") =>
      (before?.[part] ?? 0) + one[part];
    quarters.set(month, {
      month,
      cars: sum("cars"),
      inUse: sum("inUse"),
      resting: sum("resting"),
      gone: sum("gone"),
      unknown: sum("unknown"),
    });
  }
  return { months: 3, spans: [...quarters.values()] };
}

/** Where a span stands along the years: the middle of its month or quarter. */
function placeOf(span: string): number {
  const [year = "0", of = "1"] = span.split(/-|, quarter /);
  const parts = span.includes("quarter") ? 4 : 12;
  return Number(year) + (Number(of) - 0.5) / parts;
}

/** One bar a month; the kinds in the places whose filling is theirs. */
export function monthRows(spans: Survival["months"]) {
  return spans.map(({ month, cars, inUse, resting, gone, unknown }) => ({
    year: placeOf(month),
    count: cars,
    counts: [inUse, gone, resting, 0, unknown],
  }));
}

export function MonthSection({ page: { months, noMonth } }: { readonly page: Survival }) {
  if (months.length === 0) return null;
  const { months: step, spans } = spansOf(months);
  return (
    <section aria-labelledby="months" className="grid grid-cols-1 gap-3">
      <SectionHead id="months" title="By month of building" />
      <p className="max-w-prose text-small">
        Cars known of, by the month in which they were built
        {noMonth === 0 ? "" : `; of ${sayCount(noMonth)} more the month is not certain`}. How many were built
        in a month is not on the register.
      </p>
      <Legend
        id="months-legend"
        entries={parts.flatMap(({ key, hatch, label }) => {
          const count = months.reduce((sum, month) => sum + month[key], 0);
          return count === 0 ? [] : [{ hatch, label, count: sayCount(count) }];
        })}
      />
      <SharePlot id="months-plot" rows={monthRows(spans)} step={step / 12} />
      <details className="print-open text-small">
        <summary className="print:hidden min-h-11 cursor-pointer py-2">As a table</summary>
        <div className="overflow-x-auto">
          <table className="plain-table">
            <caption className="sr-only">Cars by month of building and what has become of them</caption>
            <thead>
              <tr>
                <th scope="col">Month</th>
                <th scope="col" className="num">
                  Cars
                </th>
                {parts.map(({ key, label }) => (
                  <th key={key} scope="col" className="num">
                    {label}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {spans.map((month) => (
                <tr key={month.month}>
                  <th scope="row" className="font-normal">
                    {month.month}
                  </th>
                  <td className="num">{month.cars}</td>
                  {parts.map(({ key }) => (
                    <td key={key} className="num">
                      {month[key]}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </details>
    </section>
  );
}

/** "half of the records hold 5 to 22 values, the median 16"; where all but the odd one hold as many, just that. */
export function sayHeld([lower = 0, median = 0, upper = 0]: readonly number[]): string {
  const values = (count: number) => (count === 1 ? "1 value" : `${sayCount(count)} values`);
  if (lower === upper) return `half of the records or more hold ${values(median)}`;
  return `half of the records hold ${sayCount(lower)} to ${values(upper)}, the median ${sayCount(median)}`;
}

function CompletenessSection({ page: { completeness } }: { readonly page: Survival }) {
  const { cars, noStatus, noBuilt, nothing, lower, median, upper } = completeness;
  if (median === null || lower === null || upper === null) return null;
  return (
    <section aria-labelledby="complete" className="grid grid-cols-1 gap-2">
      <SectionHead id="complete" title="How much the records hold" />
      <p className="max-w-prose">
        Of {sayCars(cars)} that are not gone, {sayHeld([lower, median, upper].map(Math.round))}.{" "}
        {[
          nothing === 0 ? "None is without any" : `${sayCount(nothing)} are without any`,
          noStatus === 0
            ? "of each it is known what has become of it"
            : `of ${sayCount(noStatus)} it is not known what has become of them`,
          noBuilt === 0
            ? "of each when it was built"
            : `of ${sayCount(noBuilt)} it is not known when they were built`,
        ].join(", ")}
        .
      </p>
    </section>
  );
}
