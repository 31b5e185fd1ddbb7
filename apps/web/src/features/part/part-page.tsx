import type { PartPage as Page } from "@trunnion/api";
import { assemblyLabels, partKindWords, scarcityWords } from "@trunnion/register";
import { DefinitionTable } from "../../components/definition-table";
import { Figure } from "../../components/figure";
import { Notice } from "../../components/notice";
import { PageHead, SectionHead } from "../../components/page-head";
import { SmallPlate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { carPath, changePartPath, partPath, partsPath, supportPath } from "../../lib/path";
import { ThumbGrid } from "../evidence/thumb";
import { InterchangeSection } from "./interchange-section";
import { NoteForm } from "./note-form";
import { NoteSection } from "./note-section";
import { sayFit, sayUse } from "./say";
import { WithdrawPart } from "./withdraw-part";

export interface PartPageProps {
  readonly club: ClubFace;
  readonly page: Page;
  /** Key of the note that the form on this page makes. */
  readonly noteKey: string;
}

/** One part: what it fits and what matters, what stands in for it, who has it, where it was last found. */
export function PartPage({ club, page, noteKey }: PartPageProps) {
  const { need, mayEdit, cars, notes, today, evidence, target } = page;
  const { part, scarcity } = need;
  return (
    <>
      <PageHead
        title={part.name}
        back={{ href: partsPath(club.slug, { assembly: part.assembly }), label: "Parts" }}
        lead={`${part.place}; ${partKindWords[part.kind]}${part.origin === "" ? "" : `, ${part.origin}`}`}
      >
        {mayEdit ? <a href={changePartPath(club.slug, part.slug)}>Change this part</a> : null}
      </PageHead>
      <Mismatches club={club.slug} page={page} />
      <div className="grid gap-x-12 gap-y-8 wide:grid-cols-2">
        <section aria-labelledby="facts">
          <SectionHead id="facts" title="What it is" />
          <Facts page={page} />
        </section>
        <section aria-labelledby="scarcity">
          <SectionHead id="scarcity" title="To be had" />
          <p className="text-lead">{scarcityWords[scarcity.rung]}</p>
          <p>{scarcity.because}</p>
          <ul className="pt-2 text-small">
            {sayUse(need.use).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <Cars club={club.slug} cars={cars} />
        </section>
      </div>
      {evidence.length === 0 && !mayEdit ? null : (
        <section aria-labelledby="photos" className="pt-8">
          <SectionHead id="photos" title="Photos and documents" />
          <ThumbGrid club={club.slug} pieces={evidence} />
          {mayEdit ? (
            <p className="print:hidden">
              <a href={supportPath(club.slug, target)} className="inline-flex min-h-11 items-center">
                {evidence.length === 0 ? "Add photos or documents" : "Add or order them"}
              </a>
            </p>
          ) : null}
        </section>
      )}
      <InterchangeSection club={club.slug} page={page} />
      <NoteSection club={club.slug} part={part.slug} notes={notes} />
      <section aria-labelledby="note-it" className="print:hidden pt-8">
        <SectionHead id="note-it" title="Note what you saw" />
        <NoteForm club={club.slug} part={part.slug} today={today} noteKey={noteKey} />
      </section>
      {mayEdit ? <WithdrawPart club={club.slug} part={part.slug} /> : null}
      <TitleBlock
        club={club.name}
        kind="Part"
        title={part.name}
        notes={["That a part fits says nothing of its condition: have it inspected before it is fitted."]}
      />
    </>
  );
}

function Facts({ page: { need } }: { readonly page: Page }) {
  const { part } = need;
  const { partNumber, note, source, locus, fits, features } = part;
  return (
    <DefinitionTable
      rows={[
        { label: "Assembly", value: assemblyLabels[part.assembly] },
        { label: "Place", value: part.place },
        { label: "Donor or maker", value: part.origin },
        { label: "Part number", value: partNumber },
        ...fits.map((fit) => ({
          label: "Fits",
          value: `${sayFit(fit)}${fit.note === undefined ? "" : `. ${fit.note}`}`,
        })),
        ...features.map(({ label, value, tells }) => ({
          label: `${label}${tells ? " (seen on the record)" : ""}`,
          value: <Figure text={value.entered} />,
        })),
        ...(note === "" ? [] : [{ label: "Note", value: note }]),
        { label: "Source", value: [source, locus].filter((text) => text !== "").join(", ") },
      ]}
    />
  );
}

function Mismatches({ club, page: { mismatches } }: { readonly club: string; readonly page: Page }) {
  if (mismatches.length === 0) return null;
  return (
    <div className="grid gap-4 pb-8">
      {mismatches.map(({ part, warnings, cars }) => (
        <Notice
          key={part.slug}
          tone="note"
          text={{
            what: `Not together with ${part.name}${part.origin === "" ? "" : ` (${part.origin})`}.`,
            remedy: warnings.join(" "),
          }}
        >
          <p className="text-small">
            <a href={partPath(club, part.slug)}>{part.name}</a>
            {cars.length === 0
              ? ": no car is recorded with both."
              : `: ${cars.length === 1 ? "one car is" : `${cars.length} cars are`} recorded with both; look there first.`}
          </p>
          <Plates club={club} cars={cars.slice(0, SHOWN)} />
          {cars.length <= SHOWN ? null : (
            <details>
              <summary className="min-h-11 cursor-pointer py-2">{cars.length - SHOWN} more</summary>
              <Plates club={club} cars={cars.slice(SHOWN)} />
            </details>
          )}
        </Notice>
      ))}
    </div>
  );
}

interface PlatesProps {
  readonly club: string;
  readonly cars: readonly { readonly reference: string; readonly chassis: string }[];
}

function Plates({ club, cars }: PlatesProps) {
  return (
    <ul className="flex flex-wrap gap-3 pt-1">
      {cars.map(({ reference, chassis }) => (
        <li key={reference}>
          <SmallPlate chassis={chassis} href={carPath(club, reference)} />
        </li>
      ))}
    </ul>
  );
}

/** Cars named before the rest is folded away. */
const SHOWN = 12;

function Cars({ club, cars }: { readonly club: string; readonly cars: Page["cars"] }) {
  if (cars.length === 0) return null;
  const line = ({ reference, chassis, series, how }: Page["cars"][number]) => (
    <li key={reference} className="flex flex-wrap items-center gap-x-4 border-hair border-b py-1">
      <SmallPlate chassis={chassis} href={carPath(club, reference)} />
      <span className="text-small">
        {series}
        <span className="text-soft">, {how === "recorded" ? "recorded" : "from the works"}</span>
      </span>
    </li>
  );
  return (
    <>
      <h3 className="pt-4 font-semibold">Cars that depend on it</h3>
      <ul>{cars.slice(0, SHOWN).map(line)}</ul>
      {cars.length <= SHOWN ? null : (
        <details>
          <summary className="min-h-11 cursor-pointer py-2">
            {cars.length === 200 ? "The others, up to 200" : `${cars.length - SHOWN} more`}
          </summary>
          <ul>{cars.slice(SHOWN).map(line)}</ul>
        </details>
      )}
    </>
  );
}
