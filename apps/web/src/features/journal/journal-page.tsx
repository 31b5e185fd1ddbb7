import type { ChainReport, JournalPage as Loaded } from "@trunnion/api";
import type { ReactNode } from "react";
import { PageHead } from "../../components/page-head";
import { Pager } from "../../components/pager";
import { Plate } from "../../components/plate";
import type { ClubFace } from "../../components/shell/shell";
import { TitleBlock } from "../../components/shell/title-block";
import { carJournalPath, carPath, clubPath, type JournalQuery, journalPath } from "../../lib/path";
import { Chain } from "./chain";
import { EntryItem } from "./entry-item";
import { FilterForm } from "./filter-form";
import { ZoneNote } from "./local-time";

export interface JournalPageProps {
  readonly club: ClubFace;
  readonly page: Loaded;
  readonly query: JournalQuery;
  /** What could not be read of what was asked for, by field. */
  readonly errors: Readonly<Record<string, string>>;
  /** Reference of the car whose journal this is; left out for the club's. */
  readonly car?: string;
  /** For who may check the chain. */
  readonly chain?: { readonly report?: ChainReport };
}

/** Who changed what, when and why: of a club, or of one car. */
export function JournalPage({ club, page, query, errors, car, chain }: JournalPageProps): ReactNode {
  const { before, check: _check, ...narrowed } = query;
  const address = (more: Omit<JournalQuery, "car"> = {}) =>
    car === undefined
      ? journalPath(club.slug, { ...narrowed, ...more })
      : carJournalPath(club.slug, car, { ...narrowed, ...more });
  const { items, next, carNotFound } = page;
  const problems =
    carNotFound === undefined ? errors : { ...errors, car: `"${carNotFound}" is no car of this register.` };
  return (
    <>
      <PageHead
        title="Journal"
        lead="Every accepted change: who, what, when, why, before and after"
        back={
          car === undefined
            ? { href: clubPath(club.slug), label: "Today" }
            : { href: carPath(club.slug, car), label: car }
        }
        {...(car === undefined ? {} : { plate: <Plate chassis={car} /> })}
      />
      <FilterForm
        action={car === undefined ? journalPath(club.slug) : carJournalPath(club.slug, car)}
        query={query}
        persons={page.persons}
        actions={page.actions}
        askCar={car === undefined}
        errors={problems}
      />
      <p className="pt-3 text-small text-soft">
        <ZoneNote /> The latest first.
      </p>
      {items.length === 0 ? (
        <p className="max-w-prose pt-6">
          {Object.keys(problems).length > 0 ? "Nothing is shown." : "Nothing in the journal fits."}
        </p>
      ) : (
        <ol aria-label="Entries" className="journal">
          {items.map((item) => (
            <EntryItem key={item.sequence} club={club.slug} item={item} nameCar={car === undefined} />
          ))}
        </ol>
      )}
      <Pager
        shown={items.length === 1 ? "1 entry shown" : `${items.length} entries shown`}
        {...(before === undefined ? {} : { first: address() })}
        {...(next === undefined ? {} : { next: address({ before: String(next) }) })}
      />
      {chain === undefined ? null : (
        <div className="pt-10">
          <Chain club={club.slug} {...chain} />
        </div>
      )}
      <TitleBlock
        club={club.name}
        kind="Journal"
        title={car ?? "Whole club"}
        notes={["The journal is only ever added to. It holds no personal data of keepers."]}
      />
    </>
  );
}
