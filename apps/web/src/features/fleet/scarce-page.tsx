import type { ScarcePart, ScarceParts } from "@trunnion/api";
import { scarcityWords } from "@trunnion/register";
import { PageHead, SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import { TitleBlock } from "../../components/shell/title-block";
import { sayCars, sayCount } from "../../lib/car-count";
import { carPath, fleetPath, partPath, partsPath, scarcePartsPath } from "../../lib/path";

/** Which cars depend on a part that nobody can find, or hardly. */
export function ScarcePage({ page }: { readonly page: ScarceParts }) {
  const { club, parts, listed, notKnown, chosen } = page;
  return (
    <>
      <PageHead
        title="Parts that are hard to find"
        back={{ href: fleetPath(club.slug), label: "Fleet" }}
        lead={`${sayCount(parts.length)} of the ${sayCount(listed)} parts on the club's list`}
      />
      <div className="grid grid-cols-1 gap-10">
        {parts.length === 0 ? (
          <p className="max-w-prose">
            None of the parts listed is noted as hard to find.
            {notKnown === 0
              ? ""
              : ` Of ${sayCount(notKnown)} nobody has noted looking: that is no sign of plenty.`}{" "}
            <a href={partsPath(club.slug)}>See the parts</a>, and note what you found or looked for in vain.
          </p>
        ) : (
          <PartTable page={page} />
        )}
        {chosen === undefined ? null : (
          <Cars
            club={club.slug}
            chosen={chosen}
            of={parts.find(({ slug }) => slug === chosen.slug)?.scarcity.dependentCars ?? 0}
          />
        )}
      </div>
      <TitleBlock
        club={club.name}
        kind="Fleet"
        title="Parts that are hard to find"
        facts={[{ label: "Parts", value: sayCount(parts.length) }]}
        notes={[
          "How hard a part is to find follows from what members noted of finding it and looking in vain, with the days.",
          "A car depends on a part where its record shows it, or where the works fitted it and the record says nothing else.",
          "What stands in for a part is what fits the series by the club's list, not what is safe on every car: look at what follows.",
        ]}
      />
    </>
  );
}

function PartTable({ page: { club, parts, notKnown } }: { readonly page: ScarceParts }) {
  return (
    <section aria-labelledby="parts">
      <SectionHead id="parts" title="The hardest first" />
      <table className="stack-table">
        <caption className="sr-only">Parts that are hard to find, with the cars that depend on them</caption>
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">How hard</th>
            <th scope="col">Cars that depend on it</th>
            <th scope="col">Stands in</th>
          </tr>
        </thead>
        <tbody>
          {parts.map((part) => (
            <PartRow key={part.slug} club={club.slug} part={part} />
          ))}
        </tbody>
      </table>
      {notKnown === 0 ? null : (
        <p className="max-w-prose pt-3 text-small text-soft">
          Of {sayCount(notKnown)} more parts nobody has noted looking: that is no sign of plenty.
        </p>
      )}
    </section>
  );
}

function PartRow({ club, part }: { readonly club: string; readonly part: ScarcePart }) {
  const { slug, name, place, series, use, scarcity, standIns } = part;
  return (
    <tr>
      <th scope="row" className="font-normal">
        <a href={partPath(club, slug)}>{name}</a>
        <span className="block text-fine text-soft">
          {place}
          {series.length === 0 ? "" : `; ${series.join(", ")}`}
        </span>
      </th>
      <td>
        <strong>{scarcityWords[scarcity.rung]}</strong>
        <span className="block text-fine text-soft">{scarcity.because}</span>
      </td>
      <td data-label="Cars that depend on it">
        {scarcity.dependentCars === 0 ? (
          "none known"
        ) : (
          <a
            href={`${scarcePartsPath(club, { part: slug })}#cars`}
            className="inline-flex min-h-11 items-center wide:min-h-0"
          >
            {sayCars(scarcity.dependentCars)}
          </a>
        )}
        <span className="block text-fine text-soft">
          {sayCount(use.recorded)} recorded, {sayCount(use.presumed)} as the works fitted it
          {use.open === 0 ? "" : `; not known of ${sayCount(use.open)}`}
        </span>
      </td>
      <td data-label="Stands in">
        {standIns.length === 0 ? (
          <span className="text-soft">nothing known</span>
        ) : (
          standIns.map((one) => (
            <a key={one.slug} href={partPath(club, one.slug)} className="block">
              {one.name}
            </a>
          ))
        )}
      </td>
    </tr>
  );
}

/** Cars told by number at once; the service tells no more. */
const MOST = 200;

type Chosen = NonNullable<ScarceParts["chosen"]>;

const hows = [
  { how: "recorded", title: "It is recorded of" },
  { how: "presumed", title: "As the works fitted it, and nothing else is recorded, on" },
] as const satisfies readonly { readonly how: Chosen["cars"][number]["how"]; readonly title: string }[];

function Cars({ club, chosen, of }: { readonly club: string; readonly chosen: Chosen; readonly of: number }) {
  const { name, cars } = chosen;
  return (
    <section aria-labelledby="cars" className="grid gap-4">
      <SectionHead id="cars" title={`Cars that depend on ${name}`} />
      {cars.length === 0 ? <p>None is known.</p> : null}
      {hows.map(({ how, title }) => {
        const own = cars.filter((car) => car.how === how);
        return own.length === 0 ? null : (
          <div key={how} className="grid gap-2">
            <h3 className="font-semibold text-small">{title}</h3>
            <ul className="flex flex-wrap gap-x-4 gap-y-3">
              {own.map(({ reference, chassis }) => (
                <li key={reference} className="inline-flex items-center gap-2 text-small">
                  <SmallPlate chassis={chassis} href={carPath(club, reference)} />
                  {reference === chassis ? null : <span className="text-fine text-soft">{reference}</span>}
                </li>
              ))}
            </ul>
          </div>
        );
      })}
      {cars.length < MOST ? null : (
        <p className="text-small text-soft">
          The first {MOST}
          {of > cars.length ? ` of ${sayCount(of)}` : ""}, those it is recorded of first.
        </p>
      )}
    </section>
  );
}
