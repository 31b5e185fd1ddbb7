import type { PartsPage as Page, PartNeed } from "@trunnion/api";
import {
  type Assembly,
  assemblies,
  assemblyLabels,
  partKindWords,
  scarcityRule,
  scarcityWords,
} from "@trunnion/register";
import { Button, LinkButton } from "../../components/button";
import { ChoiceField } from "../../components/form/form-field";
import { PageHead, SectionHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { sayLongDay } from "../../lib/day";
import { newPartPath, partPath, partsPath } from "../../lib/path";
import { sayFit, sayUse } from "./say";

export interface PartsPageProps {
  readonly club: ClubFace;
  readonly page: Page;
  readonly chosen: { readonly assembly?: Assembly; readonly series?: string };
}

/** What fits what, assembly by assembly: donor parts and substitutes, who has them, how hard they are to find. */
export function PartsPage({ club, page: { needs, mayEdit, series }, chosen }: PartsPageProps) {
  const shown = assemblies.filter((assembly) => needs.some(({ part }) => part.assembly === assembly));
  return (
    <>
      <PageHead title="Parts" lead={needs.length === 1 ? "1 part" : `${needs.length} parts`}>
        {mayEdit ? <LinkButton href={newPartPath(club.slug)}>Add a part</LinkButton> : null}
      </PageHead>
      <form
        action={partsPath(club.slug)}
        className="print:hidden grid max-w-3xl items-end gap-4 pb-8 sm:grid-cols-[1fr_1fr_auto]"
      >
        <ChoiceField
          name="assembly"
          label="Assembly"
          value={chosen.assembly ?? ""}
          options={[
            { value: "", label: "All" },
            ...assemblies.map((one) => ({ value: one, label: assemblyLabels[one] })),
          ]}
        />
        <ChoiceField
          name="series"
          label="For cars of"
          value={chosen.series ?? ""}
          options={[
            { value: "", label: "Any series" },
            ...series.map(({ slug, name }) => ({ value: slug, label: name })),
          ]}
        />
        <Button>Show</Button>
      </form>
      {needs.length === 0 ? (
        <p className="max-w-prose">
          No part is on the list{chosen.assembly || chosen.series ? " that this asks for" : " yet"}. A part on
          it says which series it fits, what differs from the original, where one was last found.
        </p>
      ) : null}
      {shown.map((assembly) => (
        <AssemblyParts
          key={assembly}
          club={club.slug}
          assembly={assembly}
          needs={needs.filter(({ part }) => part.assembly === assembly)}
        />
      ))}
      <section aria-labelledby="rule" className="max-w-prose pt-4">
        <SectionHead id="rule" title="How scarce: the rule" />
        <ul className="list-disc pl-5 text-small">
          {scarcityRule.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </section>
      <TitleBlock
        club={club.name}
        kind="List"
        title="Parts"
        facts={[{ label: "Parts", value: String(needs.length) }]}
        notes={["That a part fits says nothing of its condition: have it inspected before it is fitted."]}
      />
    </>
  );
}

interface AssemblyPartsProps {
  readonly club: string;
  readonly assembly: Assembly;
  readonly needs: readonly PartNeed[];
}

function AssemblyParts({ club, assembly, needs }: AssemblyPartsProps) {
  const places = [...new Set(needs.map(({ part }) => part.place))].sort();
  const inPlaces = places.flatMap((place) => needs.filter(({ part }) => part.place === place));
  return (
    <section aria-labelledby={`parts-${assembly}`} className="pb-8">
      <SectionHead id={`parts-${assembly}`} title={assemblyLabels[assembly]} />
      <table className="list-table part-table">
        <caption className="sr-only">Parts of the {assemblyLabels[assembly].toLowerCase()}</caption>
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Place</th>
            <th scope="col">Fits</th>
            <th scope="col">Cars</th>
            <th scope="col">Last found</th>
            <th scope="col">Fit confirmed</th>
            <th scope="col">To be had</th>
          </tr>
        </thead>
        <tbody>
          {inPlaces.map((need) => (
            <PartRow key={need.part.slug} club={club} need={need} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function PartRow({ club, need: { part, use, scarcity, standIns } }: { club: string; need: PartNeed }) {
  const { slug, name, kind, origin, partNumber, place, fits } = part;
  const scarce = scarcity.rung === "unobtainable" || scarcity.rung === "scarce";
  const of = [partKindWords[kind], origin, partNumber].filter((text) => text !== "").join(", ");
  return (
    <tr>
      <th scope="row" className="list-lead font-normal">
        <a href={partPath(club, slug)} className="inline-flex min-h-11 items-center">
          {name}
        </a>
        <span className="block text-fine text-soft">{of}</span>
      </th>
      <td>{place}</td>
      <td>
        <ul>
          {fits.map((fit) => (
            <li key={sayFit(fit)}>{sayFit(fit)}</li>
          ))}
          {fits.length === 0 ? <li className="text-soft">no series said</li> : null}
        </ul>
      </td>
      <td>
        <ul>
          {sayUse(use).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </td>
      <td>
        <Day label="Last found" day={scarcity.lastFound} />
      </td>
      <td>
        <Day label="Fit confirmed" day={scarcity.lastConfirmed} />
      </td>
      <td>
        <span className={scarce ? "font-semibold" : ""}>{scarcityWords[scarcity.rung]}</span>
        <span className="block text-fine text-soft">
          {scarcity.because}
          {scarce && standIns.length > 0
            ? ` Stands in: ${standIns.map((one) => `${one.name} (${one.on.join(", ")})`).join("; ")}.`
            : ""}
        </span>
      </td>
    </tr>
  );
}

function Day({ label, day }: { readonly label: string; readonly day: string | undefined }) {
  return (
    <>
      <span className="text-soft wide:hidden">{label}: </span>
      {day === undefined ? <span className="text-soft">never noted</span> : sayLongDay(day)}
    </>
  );
}
