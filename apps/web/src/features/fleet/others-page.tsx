import type { Others, OthersRow } from "@trunnion/api";
import { PageHead } from "../../components/page-head";
import { Plate } from "../../components/plate";
import { Legend } from "../../components/plot/hatch";
import { differsLegend } from "../../components/plot/histogram";
import { TitleBlock } from "../../components/shell/title-block";
import { sideWords } from "../../lib/assembly";
import { sayCars } from "../../lib/car-count";
import { carPath, spreadPath } from "../../lib/path";
import { PrevalenceTable } from "./prevalence-table";

/** What other owners of the series run, beside what this car has. No car of theirs is named. */
export function OthersPage({ page }: { readonly page: Others }) {
  const { club, car, series, cars, rows } = page;
  const words = sideWords[club.sideWords];
  const cell = ({ own }: OthersRow) =>
    own.length === 0 ? (
      <span className="text-soft">not recorded</span>
    ) : (
      own.map(({ side, value, differs }) => (
        <span key={side} className={`block ${differs ? "font-semibold" : ""}`}>
          {value}
          {side === "whole" ? "" : `, ${words[side].toLowerCase()}`}
          {differs ? ": differs" : ""}
        </span>
      ))
    );
  return (
    <>
      <PageHead
        title="What others run"
        back={{ href: carPath(club.slug, car.reference), label: car.chassis }}
        plate={<Plate chassis={car.chassis} {...(series === undefined ? {} : { maker: series.name })} />}
        {...(series === undefined ? {} : { lead: `${sayCars(cars)} of ${series.name}, this one among them` })}
      />
      {series === undefined ? (
        <p className="max-w-prose">
          The series of this car is not settled, so there is nothing to compare it with. The registrar can
          settle it.
        </p>
      ) : rows.length === 0 ? (
        <p className="max-w-prose">
          Of no car of {series.name} is it known that anything differs from factory.
        </p>
      ) : (
        <>
          <p className="max-w-prose pb-6">
            What differs from factory on cars of {series.name}, the most often changed first, and what this
            car has. What others run is no recommendation: look at what follows from a change before you make
            it.
          </p>
          <div className="pb-4">
            <Legend id="standing" entries={differsLegend} />
          </div>
          <PrevalenceTable
            caption={`What differs on cars of ${series.name}`}
            rows={rows}
            href={(key) => spreadPath(club.slug, key, { series: series.slug })}
            own={{ head: "This car", cell }}
          />
        </>
      )}
      <TitleBlock
        club={club.name}
        kind="Car"
        title={`What others run: ${car.chassis}`}
        notes={[
          "Counted are cars of which it is recorded. Shares of fewer than ten cars say little, and are marked.",
        ]}
      />
    </>
  );
}
