import type { InstrumentLine, InstrumentsPage as Page } from "@trunnion/api";
import { PageHead, SectionHead } from "../../components/page-head";
import { TitleBlock } from "../../components/shell/title-block";
import { sayLongDay } from "../../lib/day";
import { instrumentPath } from "../../lib/path";
import { dimensionWords } from "./instrument-fields";

/** What the club measures with: those in use, and those that old sheets still name. */
export function InstrumentsPage({ page }: { readonly page: Page }) {
  const { club, inUse, retired } = page;
  return (
    <>
      <PageHead
        title="Instruments"
        lead="What readings were taken with, and how well each tells. A new one is put on the books while a setting sheet is written."
      />
      <div className="grid gap-10">
        <List club={club.slug} id="in-use" title="In use" lines={inUse} empty="None is on the books yet." />
        {retired.length === 0 ? null : (
          <List club={club.slug} id="retired" title="Out of use" lines={retired} empty="" />
        )}
      </div>
      <TitleBlock club={club.name} kind="List" title="Instruments" />
    </>
  );
}

interface ListProps {
  readonly club: string;
  readonly id: string;
  readonly title: string;
  readonly lines: readonly InstrumentLine[];
  readonly empty: string;
}

function List({ club, id, title, lines, empty }: ListProps) {
  return (
    <section aria-labelledby={id}>
      <SectionHead id={id} title={title} />
      {lines.length === 0 ? <p className="text-soft">{empty}</p> : null}
      <ul>
        {lines.map(({ id: one, label, dimension, known, calibratedOn, calibratedUntil, retired }) => (
          <li
            key={one}
            className="flex flex-wrap items-baseline gap-x-8 gap-y-1 border-hair border-b py-1 sm:grid sm:grid-cols-[minmax(12rem,1fr)_10rem_2fr]"
          >
            <a href={instrumentPath(club, one)} className="inline-flex min-h-11 items-center">
              {label}
            </a>
            <span className="text-small">{dimensionWords[dimension] ?? dimension}</span>
            <span className="text-small text-soft">
              {known}
              {calibratedOn === undefined ? "" : `; calibrated ${sayLongDay(calibratedOn)}`}
              {calibratedUntil === undefined ? "" : `, good until ${sayLongDay(calibratedUntil)}`}
              {retired === undefined ? "" : `. ${retired}`}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
