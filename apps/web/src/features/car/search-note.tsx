import type { RegisterList } from "@trunnion/api";
import type { ReactNode } from "react";
import type { ClubFace } from "../../components/shell/shell";
import { sayCars, sayCount } from "../../lib/car-count";
import { carPath, type RegisterSearch, registerPath } from "../../lib/path";

type Said = Partial<Pick<RegisterList, "corrections" | "named" | "passedOver" | "nearest" | "stale">>;

export interface SearchNoteProps {
  readonly list: Said;
}

const quoted = (words: readonly string[]) => words.map((word) => `“${word}”`).join(", ");

/** How the words were taken, where it was not to the letter, and what the search does not know yet. */
export function SearchNote({ list }: SearchNoteProps) {
  const { corrections = [], named = [], passedOver = [], stale = 0 } = list;
  return (
    <div role="status" className="grid gap-1 pt-3 empty:hidden">
      {named.map((said) => (
        <p key={said}>
          “{said}” is taken for the series. In quotation marks it is looked for as words of the record.
        </p>
      ))}
      {corrections.map(({ word, as }) => (
        <p key={word}>
          No car has “{word}”: taken for <strong>{as.join(" or ")}</strong>.
        </p>
      ))}
      {passedOver.length === 0 ? null : (
        <p>Only the first eight words were looked for; not: {quoted(passedOver)}.</p>
      )}
      {stale === 0 ? null : (
        <p className="text-small">
          {sayCount(stale)} changes are not in the search yet. Look again in a moment.
        </p>
      )}
    </div>
  );
}

export interface NothingFoundProps extends SearchNoteProps {
  readonly club: ClubFace;
  readonly search: RegisterSearch;
  /** Whether anything was asked for at all. */
  readonly asked: boolean;
}

/** That no car fits, and what comes nearest. */
export function NothingFound({ club, search, asked, list: { nearest = [] } }: NothingFoundProps) {
  if (!asked) {
    return (
      <p className="max-w-prose pt-8">
        No car is on this register yet. Bring one in with{" "}
        <code>npm run -s trunnion -- import register.csv --club {club.slug}</code>.
      </p>
    );
  }
  const everyCar = <a href={registerPath(club.slug)}>look at every car</a>;
  if (nearest.length === 0)
    return <p className="max-w-prose pt-8">No car fits. Try fewer letters of the number, or {everyCar}.</p>;
  return (
    <div className="grid max-w-prose gap-2 pt-8">
      <p>No car fits. Nearest to it:</p>
      <ul className="grid gap-1">
        {nearest.map((one) => (
          <li key={keyOf(one)}>
            <NearLine club={club.slug} search={search} near={one} />
          </li>
        ))}
      </ul>
      <p>Or {everyCar}.</p>
    </div>
  );
}

/** That an address is of a page behind the last one, or behind a car that is not there: cars fit, but none is shown. */
export function PastTheEnd({ first }: { readonly first?: string }) {
  return (
    <p className="max-w-prose pt-8">
      No car comes after the one this address names.{" "}
      {first === undefined ? null : <a href={first}>See the list from its beginning</a>}
    </p>
  );
}

type Near = RegisterList["nearest"][number];

const keyOf = (near: Near) =>
  near.kind === "word" ? near.without : near.kind === "number" ? near.reference : near.kind;
const link = "inline-flex min-h-11 items-center sm:min-h-0";

function NearLine({
  club,
  search,
  near,
}: {
  readonly club: string;
  readonly search: RegisterSearch;
  readonly near: Near;
}): ReactNode {
  if (near.kind === "number")
    return (
      <a href={carPath(club, near.reference)} className={link}>
        {near.chassis}, the number beside it
      </a>
    );
  if (near.kind === "word")
    return (
      <a href={registerPath(club, { ...search, q: near.search })} className={link}>
        Without “{near.without}”: {sayCars(near.cars)}
      </a>
    );
  const { where: _where, filter: _filter, show: _show, ...words } = search;
  return (
    <a href={registerPath(club, words)} className={link}>
      Without the condition: {sayCars(near.cars)}
    </a>
  );
}
