import type { ReactNode } from "react";
import {
  clubPath,
  deskPath,
  eventsPath,
  fleetPath,
  garagePath,
  registerPath,
  signOutPath,
} from "../../lib/path";
import { Frame } from "./frame";
import { Wordmark } from "./wordmark";

/** A club as the pages name it. */
export interface ClubFace {
  readonly slug: string;
  readonly name: string;
}

/** Where in the club a page stands. */
export type Place = "home" | "register" | "garage" | "event" | "fleet" | "desk";

export interface ShellProps {
  readonly club: ClubFace;
  /** Every club this person belongs to, the present one included. */
  readonly clubs: readonly ClubFace[];
  readonly person: { readonly name: string; readonly roles: readonly string[] };
  /** Page one is on, for the mark under its link. */
  readonly at?: Place;
  /** Where signing out is posted to, or the server action itself; left out: the sign-out address. */
  readonly signOut?: string | (() => Promise<void>);
  readonly children: ReactNode;
}

const roleNames: Readonly<Record<string, string>> = {
  registrar: "registrar",
  owner: "owner",
  scrutineer: "scrutineer",
  fleetManager: "fleet manager",
};

/** Roles in words, as a list in a sentence. */
export function sayRoles(roles: readonly string[]): string {
  return roles.map((role) => roleNames[role] ?? role).join(", ");
}

/** Every page of a club: the frame, the club, where one can go, who one is. */
export function Shell({ children, ...head }: ShellProps) {
  return <Frame header={<Header {...head} />}>{children}</Frame>;
}

function Header({ club, clubs, person, at, signOut = signOutPath }: Omit<ShellProps, "children">) {
  const places = [
    { key: "home", label: "Today", href: clubPath(club.slug) },
    { key: "register", label: "Register", href: registerPath(club.slug) },
    ...(person.roles.includes("owner")
      ? [{ key: "garage", label: "Garage", href: garagePath(club.slug) }]
      : []),
    { key: "event", label: "Events", href: eventsPath(club.slug) },
    { key: "fleet", label: "Fleet", href: fleetPath(club.slug) },
    { key: "desk", label: "Desk", href: deskPath(club.slug) },
  ];
  return (
    <header className="print:hidden flex flex-wrap items-center gap-x-4 border-ink border-b px-4 wide:gap-x-8 wide:px-10">
      <a
        href={clubPath(club.slug)}
        className="inline-flex min-h-14 items-center no-underline"
        aria-label={`Trunnion, ${club.name}: today`}
      >
        <Wordmark short />
      </a>
      <ClubSwitch club={club} clubs={clubs} />
      <nav
        aria-label="Pages"
        className="order-last flex flex-wrap basis-full gap-x-2.5 wide:gap-x-6 wide:order-none wide:basis-auto"
      >
        {places.map(({ key, label, href }) => (
          <a
            key={key}
            href={href}
            {...(key === at ? { "aria-current": "page" as const } : {})}
            className="place"
          >
            {label}
          </a>
        ))}
      </nav>
      <details className="menu ml-auto">
        <summary>
          <span className="wide:hidden">You</span>
          <span className="hidden wide:inline">
            {person.name}
            <span className="text-soft">, {sayRoles(person.roles)}</span>
          </span>
        </summary>
        <div className="menu-sheet right-0">
          <p className="pb-2 text-small wide:hidden">
            {person.name}
            <span className="block text-soft">{sayRoles(person.roles)}</span>
          </p>
          <form action={signOut} {...(typeof signOut === "string" ? { method: "post" } : {})}>
            <button
              type="submit"
              className="min-h-11 w-full cursor-pointer text-left underline underline-offset-4"
            >
              Sign out
            </button>
          </form>
        </div>
      </details>
    </header>
  );
}

function ClubSwitch({ club, clubs }: Pick<ShellProps, "club" | "clubs">) {
  const others = clubs.filter(({ slug }) => slug !== club.slug);
  if (others.length === 0) return <span className="min-w-0 truncate">{club.name}</span>;
  return (
    <details className="menu">
      <summary>{club.name}</summary>
      <ul className="menu-sheet left-0" aria-label="Other clubs">
        {others.map(({ slug, name }) => (
          <li key={slug}>
            <a href={clubPath(slug)} className="flex min-h-11 items-center">
              {name}
            </a>
          </li>
        ))}
      </ul>
    </details>
  );
}
