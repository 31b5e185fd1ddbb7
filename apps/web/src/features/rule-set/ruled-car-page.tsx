import type { CarInRuleSet } from "@trunnion/api";
import { Button } from "../../components/button";
import { PageHead, SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { carPath, ruledCarPath, ruleSetPath } from "../../lib/path";

export interface RuledCarPageProps {
  readonly club: ClubFace;
  readonly ruleSet: { readonly slug: string; readonly version: number };
  /** Missing while no car is asked about. */
  readonly met?: CarInRuleSet;
}

const truthWords = { yes: "may enter", no: "may not enter", unknown: "the record does not say" } as const;

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
        <ul>
          {classes.map(({ code, name, eligibility }) => (
            <li key={code} className="border-hair border-b py-2">
              <p>
                <b>
                  {code} {name}
                </b>
                : {truthWords[eligibility.truth]}
              </p>
              <ul className="pl-5 text-small">
                {eligibility.obstacles.map(({ asks, has, factory, truth }) => (
                  <li key={asks} className="list-disc">
                    {truth === "no" ? "Asks that" : "Not known whether"} {asks}
                    {has === "" ? null : `; the car: ${has}`}
                    {factory === "" ? null : <b>; put back: {factory}</b>}
                  </li>
                ))}
              </ul>
            </li>
          ))}
        </ul>
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
