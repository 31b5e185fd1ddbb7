import type { CarInRuleSet } from "@trunnion/api";
import { Button } from "../../components/button";
import { PageHead, SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { carPath, ruledCarPath, ruleSetPath } from "../../lib/path";
import { ClassList } from "../event/class-list";

export interface RuledCarPageProps {
  readonly club: ClubFace;
  readonly ruleSet: { readonly slug: string; readonly version: number };
  /** Missing while no car is asked about. */
  readonly met?: CarInRuleSet;
}

/** What one car meets under a rule set: its classes with what is in the way, and the checks that follow. */
export function RuledCarPage({ club, ruleSet, met }: RuledCarPageProps) {
  return (
    <>
      <PageHead
        title={met ? `${met.facts.name}, ${met.facts.edition}, on a car` : "A rule set on a car"}
        back={{ href: ruleSetPath(club.slug, ruleSet.slug, ruleSet.version), label: "Rule set" }}
        {...(met
          ? { plate: <SmallPlate chassis={met.car.chassis} href={carPath(club.slug, met.car.reference)} /> }
          : {})}
      />
      <form
        method="get"
        action={ruledCarPath(club.slug, ruleSet)}
        className="flex flex-wrap items-end gap-4 pb-6"
      >
        <label className="grid gap-1 font-semibold">
          Car
          <input
            name="car"
            defaultValue={met?.car.reference ?? ""}
            className="field font-normal"
            autoComplete="off"
          />
        </label>
        <Button>See the car</Button>
      </form>
      {met ? <Met met={met} /> : <p>Give a chassis number.</p>}
    </>
  );
}

function Met({ met: { classes, checks, always } }: { readonly met: CarInRuleSet }) {
  return (
    <>
      <section aria-labelledby="classes" className="pb-6">
        <SectionHead id="classes" title="Classes" />
        <ClassList classes={classes} />
      </section>
      <section aria-labelledby="checks">
        <SectionHead id="checks" title="Checks that follow from this car">
          <span className="text-small text-soft">and {always} that every car gets</span>
        </SectionHead>
        <ul>
          {checks.map(({ check, why }) => (
            <li key={check.id} className="border-hair border-b py-2">
              {check.text}
              <span className="block text-small text-soft">Why: {why}</span>
            </li>
          ))}
        </ul>
      </section>
    </>
  );
}
