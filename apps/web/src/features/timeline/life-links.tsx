import type { ReactNode } from "react";
import { carJournalPath, compareCarsPath, othersPath, settingSheetsPath, timelinePath } from "../../lib/path";

interface LifeLinksProps {
  readonly club: string;
  readonly car: string;
}

const link = "print:hidden inline-flex min-h-11 items-center text-small";

/** From a car's page to its state on any day, and to who changed its record. */
export function LifeLinks({ club, car }: LifeLinksProps): ReactNode {
  return (
    <>
      <a href={settingSheetsPath(club, car)} className={link}>
        What it is set to
      </a>
      <a href={timelinePath(club, car)} className={link}>
        Its whole life, and its state on any day
      </a>
      <a href={othersPath(club, car)} className={link}>
        What others of its series run
      </a>
      <a href={compareCarsPath(club, { cars: car })} className={link}>
        Put it beside another car
      </a>
      <a href={carJournalPath(club, car)} className={link}>
        Journal of its record
      </a>
    </>
  );
}
