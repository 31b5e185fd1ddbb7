import type { CarTimeline } from "@trunnion/api";
import type { ReactNode } from "react";
import { Caution } from "../../components/caution";
import { PageHead } from "../../components/page-head";
import { Plate } from "../../components/plate";
import { TitleBlock } from "../../components/shell/title-block";
import { cautions } from "../../lib/caution";
import { sayLongDay } from "../../lib/day";
import { carPath, timelinePath } from "../../lib/path";
import { LifeView } from "./life-view";

export interface TimelinePageProps {
  readonly timeline: CarTimeline;
  /** ISO day. */
  readonly on: string;
  readonly since?: string;
  /** What was asked for and is no day of this life, as it was written. */
  readonly unread: readonly string[];
}

const short = (text: string) => (text.length > 40 ? `${text.slice(0, 40)}…` : text);

/** A car's life from its building to today, and its state on any day of it. */
export function TimelinePage({ timeline, on, since, unread }: TimelinePageProps): ReactNode {
  const { car, club, known } = timeline;
  return (
    <>
      <PageHead
        title="The whole life"
        lead={`${car.marque} ${car.series}`.trim()}
        back={{ href: carPath(club.slug, car.reference), label: car.chassis }}
        plate={<Plate chassis={car.chassis} maker={car.marque} />}
      />
      <div className="grid grid-cols-1 gap-10">
        {unread.map((text) => (
          <p key={text} className="border-red border-l-4 pl-3">
            “{short(text)}” is no day of this car&rsquo;s life: write one such as 1974-05-03, not after today.
          </p>
        ))}
        <BeliefNote timeline={timeline} on={on} />
        {known ? <LifeView timeline={timeline} on={on} {...(since === undefined ? {} : { since })} /> : null}
        <Caution cautions={cautions.car} />
      </div>
      <TitleBlock
        club={club.name}
        kind="Car"
        title={car.chassis}
        facts={[
          { label: "State on", value: sayLongDay(on) },
          {
            label: "As the record stood on",
            value: sayLongDay(timeline.believed ?? timeline.today),
          },
          {
            label: "Compared with",
            value:
              timeline.specification === undefined
                ? "no specification"
                : `specification, version ${timeline.specification}`,
          },
          { label: "Record version", value: String(car.version) },
        ]}
        notes={[
          "A date is shown as the record has it. Where it is no single day, the change counts from the last day it may have been.",
          "Left and right are as seen from the driver's seat.",
          "Brackets are drawn with the measurement's expanded uncertainty, k = 2. Inside and outside limits are proven by ISO 14253-1; where the uncertainty reaches over a limit, the verdict is: cannot tell.",
        ]}
      />
    </>
  );
}

/** Says plainly when what is shown is an earlier belief, and what of it cannot be told any more. */
function BeliefNote({ timeline, on }: Pick<TimelinePageProps, "timeline" | "on">): ReactNode {
  const { believed, known, lost, keepersShown, car, club } = timeline;
  if (believed === undefined) return null;
  const now = timelinePath(club.slug, car.reference, { on });
  return (
    <div className="max-w-prose border-line border-l-4 pl-4">
      <p className="font-semibold">
        {known
          ? `As the record stood at the end of ${sayLongDay(believed)} (UTC), whatever has been corrected since.`
          : `The register did not know of this car on ${sayLongDay(believed)} (UTC).`}
      </p>
      {lost.length === 0 ? null : (
        <p>Changed since, and not kept by the journal as it was then: {lost.join(", ")}.</p>
      )}
      {keepersShown && known ? (
        <p>Keepers are shown as the record has them now: the journal keeps no personal data.</p>
      ) : null}
      <p>
        <a href={now}>Show it as the record stands now</a>
      </p>
    </div>
  );
}
