import type { SavedFilter, Spread, Together } from "@trunnion/api";
import { assemblyLabels, valueAxis } from "@trunnion/register";
import { Choice } from "../../components/field";
import { PageHead } from "../../components/page-head";
import { TitleBlock } from "../../components/shell/title-block";
import { sideWords } from "../../lib/assembly";
import { sayCars, sayCount } from "../../lib/car-count";
import { type FleetQuery, fleetPath, spreadPath } from "../../lib/path";
import { ApartSection } from "./apart-section";
import { ChoiceBar } from "./choice-bar";
import { LimitSection } from "./limit-section";
import { TogetherSection } from "./together-section";
import { ValueSection } from "./value-section";
import { YearSection } from "./year-section";

export interface SpreadPageProps {
  readonly query: FleetQuery & { readonly side?: string; readonly value?: string };
  readonly page: Spread;
  readonly goes: Together;
  readonly saved: readonly SavedFilter[];
}

function leadOf({ cars, known, values, characteristic, side, club }: Spread): string {
  const of = `Known of ${sayCount(known)} of ${sayCars(cars)}`;
  if (!characteristic.sided) return of;
  const words = sideWords[club.sideWords];
  if (side !== undefined) return `${of}, ${words[side].toLowerCase()}`;
  return `${of}: ${sayCount(values)} values, ${words.left.toLowerCase()} and ${words.right.toLowerCase()} together`;
}

/** The axis of the page's drawings; nothing for what is no quantity. */
function axisOf({ characteristic, club }: Spread) {
  return characteristic.kind === "quantity" ? valueAxis(characteristic, club.unitSystem) : undefined;
}

/** One characteristic across the cars: how it lies, what is specified, how it changed, who stands apart, what goes with it. */
export function SpreadPage({ query, page, goes, saved }: SpreadPageProps) {
  const { club, characteristic, choice, side } = page;
  const axis = axisOf(page);
  const { value, side: _side, ...cars } = query;
  const words = sideWords[club.sideWords];
  return (
    <>
      <PageHead
        title={characteristic.label}
        back={{ href: fleetPath(club.slug), label: "Fleet" }}
        lead={leadOf(page)}
      />
      <ChoiceBar
        club={club.slug}
        action={spreadPath(club.slug, characteristic.key)}
        query={cars}
        series={choice.series}
        saved={saved}
        stale={choice.stale}
        kept={{ value }}
        {...(choice.condition === undefined ? {} : { said: choice.condition.said })}
      >
        {characteristic.sided ? (
          <Choice
            name="side"
            label="Side"
            value={side ?? ""}
            options={[
              { value: "", label: "Both" },
              { value: "left", label: words.left },
              { value: "right", label: words.right },
            ]}
          />
        ) : null}
      </ChoiceBar>
      <p className="max-w-prose pb-4 text-small text-soft">{characteristic.help}</p>
      {page.values === 0 ? (
        <p className="max-w-prose">
          Nothing is recorded of it on these cars. What only the specification says of a car is not known of
          it.
        </p>
      ) : (
        <div className="grid grid-cols-1 gap-12">
          <ValueSection page={page} axis={axis} query={query} />
          <YearSection page={page} axis={axis} />
          <ApartSection page={page} />
        </div>
      )}
      <div className="grid grid-cols-1 gap-12 pt-12">
        <LimitSection limits={page.limits} words={words} />
        <TogetherSection page={page} goes={goes} query={query} />
      </div>
      <TitleBlock
        club={club.name}
        kind="Fleet"
        title={characteristic.label}
        facts={[
          { label: "Assembly", value: assemblyLabels[characteristic.assembly] },
          { label: "Known of", value: `${sayCount(page.known)} of ${sayCars(page.cars)}` },
        ]}
        notes={[
          "Counted are present values that are recorded of a car; what only its specification says is not known of it.",
          "A value that stands apart is one to look at, not one to delete. That two things go together does not say that one is because of the other.",
        ]}
      />
    </>
  );
}
