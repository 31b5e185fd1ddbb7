import { type AssemblyCount, Differing } from "../../components/assembly-strip";
import { PageHead, SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import { SearchBox } from "../../components/search-box";
import { type ClubFace, sayRoles } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { carPath, registerPath } from "../../lib/path";
import { type HomeFacts, nextSteps, type Role } from "./next-step";

/** One of the reader's own cars. */
export interface OwnCar {
  readonly reference: string;
  readonly chassis: string;
  readonly series: string;
  readonly deviating: number;
  readonly assemblies?: readonly AssemblyCount[];
}

export interface HomePageProps {
  readonly club: ClubFace;
  readonly roles: readonly Role[];
  /** As written: "25 November 2026". */
  readonly today: string;
  readonly facts: HomeFacts;
  /** Cars this person keeps; empty where they keep none. */
  readonly ownCars: readonly OwnCar[];
}

/** Where a day at the desk begins: find a car, or do what comes next. */
export function HomePage({ club, roles, today, facts, ownCars }: HomePageProps) {
  const steps = nextSteps(club.slug, roles, facts);
  return (
    <>
      <PageHead title={club.name} lead={today} />
      <div className="max-w-3xl">
        <SearchBox
          action={registerPath(club.slug)}
          label="Find a car"
          hint={`Among ${facts.cars.toLocaleString("en-GB")}: by chassis, engine or registration number, or colour.`}
        />
      </div>
      <div className="grid gap-10 pt-8">
        {ownCars.length === 0 ? null : <OwnCars club={club.slug} cars={ownCars} />}
        {steps.length === 0 && ownCars.length > 0 ? null : (
          <section aria-labelledby="next">
            <SectionHead id="next" title="What comes next" />
            {steps.length === 0 ? <p>Nothing is waiting for you.</p> : null}
            <ol>
              {steps.map((step) => (
                <li key={step.key} className="border-hair border-b py-3">
                  <h3 className="text-lead">
                    <a href={step.href}>{step.title}</a>
                  </h3>
                  <p className="max-w-prose text-soft">{step.text}</p>
                </li>
              ))}
            </ol>
          </section>
        )}
      </div>
      <TitleBlock
        club={club.name}
        kind="Desk"
        title={today}
        facts={[{ label: "Here as", value: sayRoles(roles) }]}
      />
    </>
  );
}

function OwnCars({ club, cars }: { readonly club: string; readonly cars: readonly OwnCar[] }) {
  return (
    <section aria-labelledby="own">
      <SectionHead id="own" title={cars.length === 1 ? "Your car" : "Your cars"} />
      <ul>
        {cars.map((car) => (
          <li
            key={car.reference}
            className="flex flex-wrap items-center gap-x-6 gap-y-1 border-hair border-b py-3"
          >
            <SmallPlate chassis={car.chassis} href={carPath(club, car.reference)} />
            <span>{car.series}</span>
            <Differing
              deviating={car.deviating}
              {...(car.assemblies === undefined ? {} : { assemblies: car.assemblies })}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}
