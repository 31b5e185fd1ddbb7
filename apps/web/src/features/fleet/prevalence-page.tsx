import type { Prevalence, PrevalenceRow, SavedFilter } from "@trunnion/api";
import { assemblies, assemblyLabels } from "@trunnion/register";
import { Choice } from "../../components/field";
import { PageHead, SectionHead } from "../../components/page-head";
import { Legend } from "../../components/plot/hatch";
import { differsLegend } from "../../components/plot/histogram";
import { SharePlot } from "../../components/plot/year-plot";
import { TitleBlock } from "../../components/shell/title-block";
import { sayCars, sayCount } from "../../lib/car-count";
import { type FleetQuery, fleetPath, prevalencePath, spreadPath } from "../../lib/path";
import { ChoiceBar } from "./choice-bar";
import { differingPath } from "./differing";
import { PrevalenceTable } from "./prevalence-table";

export interface PrevalencePageProps {
  readonly page: Prevalence;
  readonly query: FleetQuery & { readonly of?: string };
  readonly saved: readonly SavedFilter[];
}

const kinds = [
  { value: "", label: "Parts and settings" },
  { value: "part", label: "Parts" },
  { value: "setting", label: "Settings" },
] as const;

/** What has been changed on how many of how many known cars. */
export function PrevalencePage({ page, query, saved }: PrevalencePageProps) {
  const { club, choice, cars } = page;
  const { of, ...rest } = query;
  const rows = page.rows.filter(({ setting }) => of === undefined || setting === (of === "setting"));
  return (
    <>
      <PageHead
        title="What has been changed"
        back={{ href: fleetPath(club.slug), label: "Fleet" }}
        lead={sayCars(cars)}
      />
      <ChoiceBar
        club={club.slug}
        action={prevalencePath(club.slug)}
        query={rest}
        series={choice.series}
        saved={saved}
        stale={choice.stale}
        {...(choice.condition === undefined ? {} : { said: choice.condition.said })}
      >
        <Choice name="of" label="Of" value={of ?? ""} options={kinds} />
      </ChoiceBar>
      <p className="max-w-prose pb-6">
        Of each characteristic: on how many of the cars of which it is known it differs from factory, and what
        is there most often instead. A car of which it is not recorded is in no count.
      </p>
      <div className="pb-6">
        <Legend id="standing" entries={differsLegend} />
      </div>
      <div className="grid grid-cols-1 gap-10">
        {assemblies.map((assembly) => {
          const own = rows.filter((row) => row.assembly === assembly);
          if (own.length === 0) return null;
          return (
            <section key={assembly} aria-labelledby={assembly}>
              <SectionHead id={assembly} title={assemblyLabels[assembly]} />
              <PrevalenceTable
                caption={`${assemblyLabels[assembly]}: how often changed`}
                rows={own}
                href={(key) => spreadPath(club.slug, key, rest)}
                carsHref={(key) => differingPath(club.slug, key, rest)}
              />
            </section>
          );
        })}
        {rows.length === 0 ? (
          <p className="max-w-prose">
            {cars === 0 ? "No car fits." : "Nothing of the kind is recorded of these cars."}
          </p>
        ) : null}
        <ChangeYears rows={rows} />
      </div>
      <TitleBlock
        club={club.name}
        kind="Fleet"
        title="What has been changed"
        facts={[{ label: "Cars", value: sayCars(cars) }]}
        notes={[
          "Differs: outside limits, another part, added or missing. A period option or an accepted substitute does not count as changed.",
          "Shares of fewer than ten cars say little, and are marked.",
        ]}
      />
    </>
  );
}

/** Changes by year: a car whose bar and bush were changed in one year counts once for each. */
export function changeYears(rows: readonly PrevalenceRow[]) {
  const years = new Map<number, number>();
  for (const { changed } of rows)
    for (const { year, cars } of changed) years.set(year, (years.get(year) ?? 0) + cars);
  return [...years].sort(([a], [b]) => a - b).map(([year, count]) => ({ year, count, counts: [count] }));
}

export function ChangeYears({ rows }: { readonly rows: readonly PrevalenceRow[] }) {
  const years = changeYears(rows);
  const undated = rows.reduce((sum, row) => sum + row.undated, 0);
  if (years.length === 0) return null;
  return (
    <section aria-labelledby="years" className="grid grid-cols-1 gap-3">
      <SectionHead id="years" title="When it was changed" />
      <p className="max-w-prose text-small">
        Changes of a characteristic whose year the record is sure of
        {undated === 0 ? "" : `; of ${sayCount(undated)} more it is not`}. Cars merely seen to differ are not
        among them.
      </p>
      <Legend id="change-years" entries={[{ hatch: "lines", label: "Changes recorded in the year" }]} />
      <SharePlot id="change-years-plot" rows={years} />
      <details className="print-open text-small">
        <summary className="print:hidden min-h-11 cursor-pointer py-2">As a table</summary>
        <table className="plain-table">
          <caption className="sr-only">Changes by year</caption>
          <thead>
            <tr>
              <th scope="col">Year</th>
              <th scope="col" className="num">
                Changes
              </th>
            </tr>
          </thead>
          <tbody>
            {years.map(({ year, count }) => (
              <tr key={year}>
                <th scope="row" className="font-normal">
                  {year}
                </th>
                <td className="num">{count}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
  );
}
