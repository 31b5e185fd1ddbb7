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
import { mostCompared } from "./compare-limit";
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
  const lead = cars.length === 2 ? "2 cars" : `${sayCars(cars.length)}, held against ${held}`;
  return (
    <>
      <PageHead
        title="Cars side by side"
        back={{ href: fleetPath(club.slug), label: "Fleet" }}
        {...(comparison === undefined ? {} : { lead })}
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
          "Two values are the same when they differ by less than half the coarser of the steps they were read to. So that they compare, all are in one unit, and angles in degrees and minutes; as entered they stand on each car's page.",
          "Outside limits is said against the car's own specification: cars may be the same and all outside. Of two like figures the one read more coarsely may be the one of which it cannot be told.",
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
        className="grid gap-4 sm:grid-cols-2 wide:grid-cols-[2fr_1.3fr_1fr_auto] wide:items-start"
      >
        <Field
          name="cars"
          label="Cars"
          small
          value={query.cars ?? ""}
          hint={`Two to ${mostCompared} numbers, with commas between; up to six stand in columns.`}
          autoComplete="off"
        />
        <Choice
          name="series"
          label="Or every car of"
          value={query.series ?? ""}
          options={[
            { value: "", label: "No series: the cars named" },
            ...series.map(({ slug, name }) => ({ value: slug, label: name })),
          ]}
        />
        <Field
          name="against"
          label="Against"
          small
          value={query.against ?? ""}
          hint="Left empty: what most have."
          autoComplete="off"
        />
        <div className="wide:pt-6">
          <Button>Compare</Button>
        </div>
      </form>
    </search>
  );
}

function Missing({ page: { notFound, leftOut, cars, comparison } }: { readonly page: ComparisonPage }) {
  return (
    <div className="grid gap-3 pb-6 empty:hidden">
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
      {comparison === undefined ? (
        <p className="max-w-prose">
          {cars.length === 1
            ? `Write further numbers after ${cars[0]?.reference}, with commas between, or choose a series.`
            : "Name two cars at least, or a series."}
        </p>
      ) : null}
    </div>
  );
}

interface FoundProps {
  readonly page: ComparisonPage;
  readonly comparison: NonNullable<ComparisonPage["comparison"]>;
}

function Found({ page, comparison }: FoundProps) {
  const { club, cars, inColumns, against } = page;
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
          <DifferingTable
            club={club.slug}
            cars={cars}
            rows={rows}
            words={words}
            {...(against === undefined ? {} : { reference: against })}
          />
        )}
        {rows.length === 0 || same === 0 ? null : (
          <p className="pt-3 text-small text-soft">
            {same === 1 ? "One more characteristic is" : `${same} more characteristics are`} the same on every
            car.
          </p>
        )}
      </section>
      {open.length === 0 ? null : (
        <details className="print-open text-small">
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

const noStanding = { outside: 0, cannotTell: 0 };

/** "differs at 11; 2 outside limits, 1 cannot be told"; of two cars neither differs more than the other. */
export function sayStanding(
  { outside, cannotTell }: typeof noStanding,
  { count, isReference }: { readonly count?: number; readonly isReference: boolean },
): string {
  const differs = isReference ? "the reference" : count === 0 ? "differs nowhere" : `differs at ${count}`;
  const limits = [
    ...(outside === 0 ? [] : [`${outside} outside limits`]),
    ...(cannotTell === 0 ? [] : [`${cannotTell} cannot be told`]),
  ].join(", ");
  const said = count === undefined && !isReference ? [] : [differs];
  return [...said, ...(limits === "" ? [] : [limits])].join("; ") || "nothing outside limits";
}

/** Every car with how it stands: what is outside limits first, then where it differs most often. */
function CarsTold({ page: { club, cars, against }, comparison: { differing, standing } }: FoundProps) {
  const order = cars.map((car, place) => ({
    car,
    place,
    count: differing[place] ?? 0,
    stands: standing[place] ?? noStanding,
  }));
  order.sort((a, b) => b.stands.outside - a.stands.outside || b.count - a.count);
  return (
    <ul className="grid gap-x-8 gap-y-2 sm:grid-cols-2 wide:grid-cols-3">
      {order.map(({ car, place, count, stands }) => (
        <li key={car.reference} className="inline-flex items-center gap-2 text-small">
          <SmallPlate chassis={car.chassis} href={carPath(club.slug, car.reference)} />
          <span>{sayStanding(stands, { count, isReference: place === against })}</span>
        </li>
      ))}
    </ul>
  );
}
