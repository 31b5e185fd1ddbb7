import type { ComparisonPage } from "@trunnion/api";
import { Button } from "../../components/button";
import { Choice, Field } from "../../components/field";
import { Notice } from "../../components/notice";
import { PageHead, SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import { TitleBlock } from "../../components/shell/title-block";
import { sideWords } from "../../lib/assembly";
import { sayCars } from "../../lib/car-count";
import { carPath, compareCarsPath, fleetPath } from "../../lib/path";
import { ColumnTable, DifferingTable } from "./compare-table";

export interface ComparePageProps {
  readonly page: ComparisonPage;
  readonly query: { readonly cars?: string; readonly series?: string; readonly against?: string };
}

/** Cars side by side: only what differs, worst first. */
export function CompareCarsPage({ page, query }: ComparePageProps) {
  const { club, cars, comparison, against } = page;
  const reference = against === undefined ? undefined : cars[against];
  const held = reference === undefined ? "what most of them have" : reference.chassis;
  return (
    <>
      <PageHead
        title="Cars side by side"
        back={{ href: fleetPath(club.slug), label: "Fleet" }}
        {...(comparison === undefined ? {} : { lead: `${sayCars(cars.length)}, held against ${held}` })}
      />
      <CompareForm page={page} query={query} />
      <Missing page={page} />
      {comparison === undefined ? null : <Found page={page} comparison={comparison} />}
      <TitleBlock
        club={club.name}
        kind="Fleet"
        title="Cars side by side"
        facts={[{ label: "Cars", value: String(cars.length) }]}
        notes={[
          "Two values are the same when they differ by less than half the coarser of the steps they were read to.",
          "A car of which nothing is recorded is neither the same nor different.",
        ]}
      />
    </>
  );
}

function CompareForm({ page: { club, series }, query }: ComparePageProps) {
  return (
    <search className="print:hidden pb-6">
      <form
        action={compareCarsPath(club.slug)}
        method="get"
        className="grid gap-4 sm:grid-cols-2 wide:grid-cols-[2fr_1fr_1fr_auto] wide:items-start"
      >
        <Field
          name="cars"
          label="Cars"
          value={query.cars ?? ""}
          hint="Two to six numbers, with commas between."
          autoComplete="off"
        />
        <Choice
          name="series"
          label="or every car of"
          value={query.series ?? ""}
          options={[
            { value: "", label: "No series" },
            ...series.map(({ slug, name }) => ({ value: slug, label: name })),
          ]}
        />
        <Field
          name="against"
          label="Against"
          value={query.against ?? ""}
          hint="Left empty: what most have."
          autoComplete="off"
        />
        <div className="wide:pt-7">
          <Button>Compare</Button>
        </div>
      </form>
    </search>
  );
}

function Missing({ page: { notFound, leftOut, cars, comparison } }: { readonly page: ComparisonPage }) {
  return (
    <>
      {notFound.length === 0 ? null : (
        <Notice
          text={{
            what: `There is no car ${notFound.map((one) => `“${one}”`).join(", ")} on this register.`,
            remedy: "Write numbers as the register has them; a second car of one number as in S2-0145~2.",
          }}
        />
      )}
      {leftOut === 0 ? null : (
        <Notice
          tone="note"
          text={{
            what: `The series has ${leftOut} more cars than are compared at once: the first ${cars.length} by number are.`,
            remedy:
              "For a whole register look at how often what was changed, characteristic by characteristic.",
          }}
        />
      )}
      {comparison === undefined ? <p className="max-w-prose">Name two cars at least, or a series.</p> : null}
    </>
  );
}

interface FoundProps {
  readonly page: ComparisonPage;
  readonly comparison: NonNullable<ComparisonPage["comparison"]>;
}

function Found({ page, comparison }: FoundProps) {
  const { club, cars, inColumns } = page;
  const words = sideWords[club.sideWords];
  const { rows, open, same } = comparison;
  return (
    <div className="grid grid-cols-1 gap-10">
      <CarsTold page={page} comparison={comparison} />
      <section aria-labelledby="differs">
        <SectionHead id="differs" title="What differs" />
        {rows.length === 0 ? (
          <p className="max-w-prose pt-2">
            Nothing that is recorded differs
            {same === 0 ? "" : `: ${same} characteristics are the same on every car`}.
          </p>
        ) : inColumns ? (
          <ColumnTable club={club.slug} cars={cars} rows={rows} words={words} />
        ) : (
          <DifferingTable club={club.slug} cars={cars} rows={rows} words={words} />
        )}
        {rows.length === 0 || same === 0 ? null : (
          <p className="pt-3 text-small text-soft">
            {same === 1 ? "One more characteristic is" : `${same} more characteristics are`} the same on every
            car.
          </p>
        )}
      </section>
      {open.length === 0 ? null : (
        <details className="text-small">
          <summary className="min-h-11 cursor-pointer py-2">
            {open.length === 1 ? "One characteristic" : `${open.length} characteristics`} not known of every
            car
          </summary>
          <ul className="grid gap-1">
            {open.map(({ label, side, unknown }) => (
              <li key={`${label} ${side}`}>
                {label}
                {side === "whole" ? "" : `, ${words[side].toLowerCase()}`}: not recorded of{" "}
                {unknown.map((car) => cars[car]?.chassis).join(", ")}
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

/** Every car with how often it differs, the most often first. */
function CarsTold({ page: { club, cars, against }, comparison: { differing } }: FoundProps) {
  const order = cars.map((car, place) => ({ car, place, count: differing[place] ?? 0 }));
  order.sort((a, b) => b.count - a.count);
  return (
    <ul className="flex flex-wrap gap-x-6 gap-y-2">
      {order.map(({ car, place, count }) => (
        <li key={car.reference} className="inline-flex items-center gap-2 text-small">
          <SmallPlate chassis={car.chassis} href={carPath(club.slug, car.reference)} />
          <span>
            {place === against ? "the reference" : count === 0 ? "differs nowhere" : `differs at ${count}`}
          </span>
        </li>
      ))}
    </ul>
  );
}
