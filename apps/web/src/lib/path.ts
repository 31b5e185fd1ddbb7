/**
 * Every address of the web pages, made here and nowhere else. Clubs and cars are named by what a person would
 * type: the club's short name, the car's reference as the service gives it.
 */
type Query = Readonly<Record<string, string | undefined>>;

function withQuery(path: string, query: Query): string {
  const parts = new URLSearchParams();
  for (const [name, value] of Object.entries(query)) {
    if (value !== undefined && value !== "") parts.set(name, value);
  }
  return parts.size === 0 ? path : `${path}?${parts}`;
}

/** What a journal is narrowed to. */
export interface JournalQuery {
  readonly car?: string;
  readonly person?: string;
  readonly action?: string;
  readonly from?: string;
  readonly to?: string;
  readonly before?: string;
  /** "chain": works the chain of hashes out again. */
  readonly check?: string;
}

const part = encodeURIComponent;

export const signInPath = "/sign-in";
export const signOutPath = "/sign-out";
export const clubsPath = "/";
export const invitationPath = (token: string): string => `/invitation/${part(token)}`;
export const signInFormPath = "/api/sign-in";
export const invitationFormPath = (token: string): string => `/api/invitation/${part(token)}`;
export const clubPath = (club: string): string => `/club/${part(club)}`;

/** What the register is narrowed by. */
export interface RegisterSearch {
  readonly q?: string;
  readonly series?: string;
  /** A condition, as `writeCondition` writes it. */
  readonly where?: string;
  /** Name of a saved filter, instead of a condition. */
  readonly filter?: string;
  /** "unknown": the cars of which the record does not say whether the condition holds. */
  readonly show?: string;
}

/** The register; `after` is the reference of the last car of the page before. */
export const registerPath = (
  club: string,
  query: RegisterSearch & { readonly after?: string } = {},
): string => withQuery(`${clubPath(club)}/car`, { ...query });
/** Where a condition on the register is put together; the search and the series are kept on the way. */
export const filterPath = (club: string, query: Omit<RegisterSearch, "show"> = {}): string =>
  withQuery(`${clubPath(club)}/filter`, { ...query });
export const savedFiltersPath = (club: string): string => `${clubPath(club)}/filter/saved`;

/** A car's page; `against` names the baseline when it is not the specification. */
export const carPath = (club: string, car: string, query: { readonly against?: string } = {}): string =>
  withQuery(`${clubPath(club)}/car/${part(car)}`, query);
/** A car's whole life: its state on a day, since another day, and as it was believed on a third. */
export const timelinePath = (
  club: string,
  car: string,
  query: { readonly on?: string; readonly since?: string; readonly believed?: string } = {},
): string => withQuery(`${carPath(club, car)}/timeline`, query);
/** The club's journal; `before` is the place of the last entry of the page before. */
export const journalPath = (club: string, query: JournalQuery = {}): string =>
  withQuery(`${clubPath(club)}/journal`, { ...query });
/** The journal of one car. */
export const carJournalPath = (club: string, car: string, query: Omit<JournalQuery, "car"> = {}): string =>
  withQuery(`${carPath(club, car)}/journal`, { ...query });
export const journalEntryPath = (club: string, sequence: number): string =>
  `${clubPath(club)}/journal/${sequence}`;
export const correctCarPath = (club: string, car: string): string => `${carPath(club, car)}/correct`;
/** Tools of whoever keeps the register. */
export const deskPath = (club: string): string => `${clubPath(club)}/desk`;
export const extractSettingsPath = (club: string): string => `${deskPath(club)}/extract`;
/** What a club shows to everybody; `after` is the reference of the last car of the page before. */
export const extractPath = (club: string, query: { readonly after?: string } = {}): string =>
  withQuery(`/extract/${part(club)}`, query);
export const extractCarPath = (club: string, car: string): string => `/extract/${part(club)}/${part(car)}`;
export const eventsPath = (club: string): string => `${clubPath(club)}/event`;
export const eventPath = (club: string, event: string): string => `${eventsPath(club)}/${part(event)}`;

/** One car's dossier as PDF; keepers only where asked for. */
export const dossierPath = (
  club: string,
  car: string,
  query: { readonly keepers?: "yes"; readonly paper?: string } = {},
): string => withQuery(`/api/club/${part(club)}/car/${part(car)}/dossier.pdf`, query);

/** The PDF of one sheet, or of all of an event in running-number order. */
export const sheetsPath = (
  club: string,
  event: string,
  query: { readonly number?: string; readonly paper?: string } = {},
): string => withQuery(`/api/club/${part(club)}/event/${part(event)}/sheets.pdf`, query);

/** Where an assembly stands on a car's page: what the plan's leaders point to. */
export const assemblyAnchor = (assembly: string): string =>
  `assembly-${assembly.replace(/[^A-Za-z0-9]+/g, "-").toLowerCase()}`;
