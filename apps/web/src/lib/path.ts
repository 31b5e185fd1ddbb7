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
  /** Name of a saved filter; with a condition beside it both must hold. */
  readonly filter?: string;
  /** "unknown": the cars of which the record does not say whether the condition holds. */
  readonly show?: string;
  readonly order?: string;
  /** Keys of characteristics shown beside, with commas between. */
  readonly col?: string;
  /** "cards" or "table"; as it was last looked at when left out. */
  readonly view?: string;
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
/** What a car is set to: its latest setting sheet, or the one named. */
export const settingSheetsPath = (
  club: string,
  car: string,
  query: { readonly sheet?: string; readonly sent?: string } = {},
): string => withQuery(`${carPath(club, car)}/setting`, query);
/** The form of a new setting sheet; `found` with a column for what was found before anything was moved. */
export const newSettingSheetPath = (
  club: string,
  car: string,
  query: { readonly found?: "yes" } = {},
): string => withQuery(`${carPath(club, car)}/setting/new`, query);
/** Which adjuster, how far, to reach a setting; what is typed comes along in the address. */
export const setupPlanPath = (
  club: string,
  car: string,
  query: Readonly<Record<string, string | undefined>> = {},
): string => withQuery(`${carPath(club, car)}/plan`, query);
/** The plan as a page for the garage. */
export const setupPlanPdfPath = (
  club: string,
  car: string,
  query: Readonly<Record<string, string | undefined>> = {},
): string => withQuery(`/api/club/${part(club)}/car/${part(car)}/plan.pdf`, query);
/** Springs and bars against roll, load transfer and ride. */
export const rollPath = (
  club: string,
  car: string,
  query: Readonly<Record<string, string | undefined>> = {},
): string => withQuery(`${carPath(club, car)}/roll`, query);
/** The club's journal; `before` is the place of the last entry of the page before. */
export const journalPath = (club: string, query: JournalQuery = {}): string =>
  withQuery(`${clubPath(club)}/journal`, { ...query });
/** The journal of one car. */
export const carJournalPath = (club: string, car: string, query: Omit<JournalQuery, "car"> = {}): string =>
  withQuery(`${carPath(club, car)}/journal`, { ...query });
export const journalEntryPath = (club: string, sequence: number): string =>
  `${clubPath(club)}/journal/${sequence}`;
export const correctCarPath = (club: string, car: string): string => `${carPath(club, car)}/correct`;
/** The form that adds a car; what was typed so far comes along where no script checks the number. */
export const addCarPath = (club: string, query: Readonly<Record<string, string | undefined>> = {}): string =>
  withQuery(`${clubPath(club)}/add-car`, query);
/** A car's record row by row; `section` is where one comes back to. */
export const editCarPath = (club: string, car: string, section?: string): string =>
  `${carPath(club, car)}/edit${section === undefined ? "" : `#${section}`}`;
/** The form over one part of a car's record: one row of it, or a new one. */
export const editPartPath = (
  club: string,
  car: string,
  partName: string,
  query: Readonly<Record<string, string | undefined>> = {},
): string => withQuery(`${carPath(club, car)}/edit/${part(partName)}`, query);
export const ownContactPath = (club: string): string => `${clubPath(club)}/own-contact`;
/** Everything held of a keeper as JSON, for that person. */
export const keeperDataPath = (club: string, keeper: string): string =>
  `/api/club/${part(club)}/keeper/${part(keeper)}/data.json`;
export const numbersPath = (club: string): string => `${clubPath(club)}/number`;
export const claimPath = (club: string, kind: string, number: string): string =>
  `${numbersPath(club)}/${part(kind)}/${part(number)}`;
export const mergePath = (club: string, into: string, from: string): string =>
  withQuery(`${clubPath(club)}/merge`, { into, from });
/** The working of one thing that follows from a car's differences. */
export const consequencePath = (club: string, car: string, id: string): string =>
  `${carPath(club, car)}/consequence/${part(id)}`;
/** Tools of whoever keeps the register. */
/** A car's photos and documents; `of` narrows to one kind of what they support, `for` names what the next one supports. */
export const carEvidencePath = (
  club: string,
  car: string,
  query: { readonly of?: string; readonly for?: string } = {},
): string => withQuery(`${carPath(club, car)}/evidence`, query);
/** What supports one thing of the record, by its reference (`evidenceTargetReference`). */
export const supportPath = (club: string, target: string): string =>
  withQuery(`${clubPath(club)}/evidence`, { for: target });
export const evidencePath = (club: string, evidence: string): string =>
  `${clubPath(club)}/evidence/${part(evidence)}`;
/** Where the form that adds evidence is sent. */
export const evidenceFormPath = (club: string): string => `/api/club/${part(club)}/evidence`;
export const evidenceFilePath = (club: string, evidence: string): string =>
  `${evidenceFormPath(club)}/${part(evidence)}/file`;
/** A picture made small: the longer side in pixels, its quarter turns clockwise. What is at an address never changes. */
export const smallPicturePath = (
  club: string,
  picture: { readonly id: string; readonly quarterTurns: number },
  edge: 320 | 1280,
): string => `${evidenceFormPath(club)}/${part(picture.id)}/${edge}-${picture.quarterTurns}.webp`;

export const deskPath = (club: string): string => `${clubPath(club)}/desk`;
export const importsPath = (club: string, query: { readonly outcome?: string } = {}): string =>
  withQuery(`${clubPath(club)}/import`, query);
export const importPath = (club: string, run: string): string => `${clubPath(club)}/import/${part(run)}`;
/** Where a file to read in is sent. */
export const importFormPath = (club: string): string => `/api/club/${part(club)}/import`;
/** The rows of an import that were left out, as CSV. */
export const importProblemsPath = (club: string, run: string): string =>
  `${importFormPath(club)}/${part(run)}/problems.csv`;
export const extractSettingsPath = (club: string): string => `${deskPath(club)}/extract`;
/** What a club shows to everybody; `after` is the reference of the last car of the page before. */
export const extractPath = (club: string, query: { readonly after?: string } = {}): string =>
  withQuery(`/extract/${part(club)}`, query);
export const extractCarPath = (club: string, car: string): string => `/extract/${part(club)}/${part(car)}`;
/** The club's specifications, series by series. */
export const specificationsPath = (club: string): string => `${clubPath(club)}/specification`;
/** A series' specification: the current version, or the one of a number. */
export const specificationPath = (club: string, series: string, version?: number): string =>
  `${specificationsPath(club)}/series/${part(series)}${version === undefined ? "" : `/version/${version}`}`;
/** The form of one entry of a draft; without its id the one for a new entry. */
export const specificationEntryPath = (
  club: string,
  draft: { readonly series: string; readonly version: number },
  entry: { readonly id?: string; readonly characteristic?: string } = {},
): string => {
  const path = `${specificationPath(club, draft.series, draft.version)}/entry`;
  return entry.id === undefined
    ? withQuery(path, { characteristic: entry.characteristic })
    : `${path}/${part(entry.id)}`;
};
export const specificationReviewPath = (club: string, series: string, version: number): string =>
  `${specificationPath(club, series, version)}/review`;
export const specificationImportPath = (club: string, series: string, version: number): string =>
  `${specificationPath(club, series, version)}/import`;
export const specificationCsvPath = (club: string, series: string, version: number): string =>
  `/api/club/${part(club)}/specification/${part(series)}/${version}/specification.csv`;
/** What differs between two specifications, each named as `series@version`, or `series` for its current one. */
export const specificationComparePath = (
  club: string,
  query: { readonly before?: string; readonly after?: string } = {},
): string => withQuery(`${specificationsPath(club)}/compare`, query);
export const newMarquePath = (club: string): string => `${specificationsPath(club)}/new-marque`;
export const newSeriesPath = (club: string): string => `${specificationsPath(club)}/new-series`;
export const seriesFormPath = (club: string, series: string): string =>
  `${specificationPath(club, series)}/change`;
/** The club's own characteristics. */
export const characteristicsPath = (club: string): string => `${specificationsPath(club)}/characteristic`;
export const characteristicPath = (club: string, key: string): string =>
  `${characteristicsPath(club)}/${part(key)}`;
export const newCharacteristicPath = (club: string): string =>
  `${specificationsPath(club)}/new-characteristic`;
export const eventsPath = (club: string): string => `${clubPath(club)}/event`;
export const eventPath = (club: string, event: string): string => `${eventsPath(club)}/${part(event)}`;
/** The event in the hand; opens without a connection. */
export const paddockPath = (club: string, event: string): string => `${eventPath(club, event)}/paddock`;

export const newEventPath = (club: string): string => `${clubPath(club)}/new-event`;
export const changeEventPath = (club: string, event: string): string => `${eventPath(club, event)}/change`;
/** Where a list of entries is pasted. */
export const entryListPath = (club: string, event: string): string => `${eventPath(club, event)}/entry-list`;
/** The form of a new entry. */
export const newEntryPath = (club: string, event: string): string => `${eventPath(club, event)}/new-entry`;
/** One entry at scrutineering; `all` shows what was passed before, too. */
export const entryPath = (
  club: string,
  event: string,
  number: string,
  query: { readonly all?: "yes" } = {},
): string => withQuery(`${eventPath(club, event)}/entry/${part(number)}`, query);
export const changeEntryPath = (club: string, event: string, number: string): string =>
  `${entryPath(club, event, number)}/change`;
export const ruleSetsPath = (club: string): string => `${clubPath(club)}/rule-set`;
export const ruleSetPath = (club: string, ruleSet: string, version: number): string =>
  `${ruleSetsPath(club)}/${part(ruleSet)}/version/${version}`;
/** The form of one check, class or limit of a draft; `row` is its code or id, left out for a new one. */
export const ruleFormPath = (
  club: string,
  draft: { readonly slug: string; readonly version: number },
  kind: "check" | "class" | "limit",
  row?: string,
): string => withQuery(`${ruleSetPath(club, draft.slug, draft.version)}/${kind}`, { row });
/** What one car meets under a rule set. */
export const ruledCarPath = (
  club: string,
  ruleSet: { readonly slug: string; readonly version: number },
  query: { readonly car?: string; readonly class?: string } = {},
): string => withQuery(`${ruleSetPath(club, ruleSet.slug, ruleSet.version)}/car`, query);

/** One car's dossier as PDF; keepers only where asked for. */
export const dossierPath = (
  club: string,
  car: string,
  query: { readonly keepers?: "yes"; readonly paper?: string } = {},
): string => withQuery(`/api/club/${part(club)}/car/${part(car)}/dossier.pdf`, query);

/** What became of an event. */
export const eventReportPath = (club: string, event: string, kind: "pdf" | "csv"): string =>
  `/api/club/${part(club)}/event/${part(event)}/report.${kind}`;

/** Where filled-in sheets of an event are sent. */
export const sheetFormsPath = (club: string, event: string): string =>
  `/api/club/${part(club)}/event/${part(event)}/sheet-form`;
/** Where a dropped file is taken. */
export const sheetFormPath = (club: string, event: string, drop: string): string =>
  `${sheetFormsPath(club, event)}/${part(drop)}`;
/** Where a dropped file is looked at; `taken` after it was. */
export const sheetFormLookPath = (club: string, event: string, drop: string, taken?: string): string =>
  withQuery(`${eventPath(club, event)}/sheet-form/${part(drop)}`, { taken });
/** The PDF of one sheet, or of all of an event in running-number order. */
export const sheetsPath = (
  club: string,
  event: string,
  query: { readonly number?: string; readonly paper?: string } = {},
): string => withQuery(`/api/club/${part(club)}/event/${part(event)}/sheets.pdf`, query);

/** Where the club's archive and its lists are fetched. */
export const exportPath = (club: string): string => `${clubPath(club)}/export`;
/** The club's archive as a ZIP file; people's names only where asked for. */
export const archivePath = (club: string, query: { readonly people?: "yes" } = {}): string =>
  withQuery(`/api/club/${part(club)}/archive.zip`, query);
/** Lists that are fetched as files. */
export type ListName = "cars" | "found" | "state" | "journal" | "entries";
/**
 * A list as a file: of the cars whole, or as found by the search of the register page, the state of a car, the journal of club or car,
 * the entries of an event. `people`: with columns of personal data, for those who may see them.
 */
export const listPath = (
  club: string,
  list: ListName,
  format: "csv" | "xlsx",
  query: RegisterSearch & {
    readonly car?: string;
    readonly event?: string;
    readonly people?: "yes";
  } = {},
): string => withQuery(`/api/club/${part(club)}/list/${list}.${format}`, { ...query });

/** Where an assembly stands on a car's page: what the plan's leaders point to. */
export const assemblyAnchor = (assembly: string): string =>
  `assembly-${assembly.replace(/[^A-Za-z0-9]+/g, "-").toLowerCase()}`;

/** Where a change to a car begins: the plan, or a search, to choose what was changed. */
export const startChangePath = (
  club: string,
  car: string,
  query: { readonly assembly?: string; readonly find?: string; readonly ticked?: string } = {},
): string => withQuery(`${carPath(club, car)}/change`, query);
/** A submission: its form while it is a draft, what it says afterwards. */
export const submissionPath = (
  club: string,
  id: string,
  query: {
    readonly assembly?: string;
    readonly find?: string;
    readonly ticked?: string;
    readonly at?: string;
  } = {},
): string => {
  const { at, ...rest } = query;
  const path = withQuery(`${clubPath(club)}/submission/${part(id)}`, rest);
  return at === undefined ? path : `${path}#${at}`;
};
/** The working of one consequence of a submission. */
export const submissionConsequencePath = (club: string, id: string, consequence: string): string =>
  `${submissionPath(club, id)}/consequence/${part(consequence)}`;
/** What waits for the registrar's decision; `done` says what was just decided, of `last`. */
export const reviewPath = (
  club: string,
  query: { readonly done?: string; readonly last?: string; readonly failed?: string } = {},
): string => withQuery(`${clubPath(club)}/review`, query);
export const garagePath = (club: string): string => `${clubPath(club)}/garage`;
/** What members were told, and whether it went out. */
export const noticesPath = (club: string): string => `${clubPath(club)}/notice`;

/** Which cars the fleet's pages speak of. */
export type FleetQuery = Pick<RegisterSearch, "series" | "where" | "filter">;
/** Questions across every car. */
export const fleetPath = (club: string): string => `${clubPath(club)}/fleet`;
/** One characteristic across the cars: its spread, its years, what goes with it; `value` is what shall go with others. */
export const spreadPath = (
  club: string,
  key: string,
  query: FleetQuery & { readonly side?: string; readonly value?: string } = {},
): string => withQuery(`${fleetPath(club)}/characteristic/${part(key)}`, { ...query });
/** How often what was changed. */
export const prevalencePath = (club: string, query: FleetQuery & { readonly of?: string } = {}): string =>
  withQuery(`${fleetPath(club)}/modification`, { ...query });
/** What other owners of a car's series run. */
export const othersPath = (club: string, car: string): string => `${carPath(club, car)}/others`;
/** Cars side by side; `cars` as typed, with commas or lines between. */
export const compareCarsPath = (
  club: string,
  query: { readonly cars?: string; readonly series?: string; readonly against?: string } = {},
): string => withQuery(`${fleetPath(club)}/compare`, query);
/** The club's parts: what fits what, who has it, how hard it is to find. */
export const partsPath = (
  club: string,
  query: { readonly assembly?: string; readonly series?: string } = {},
): string => withQuery(`${clubPath(club)}/part`, query);
export const partPath = (club: string, name: string): string => `${partsPath(club)}/${part(name)}`;
export const changePartPath = (club: string, name: string): string => `${partPath(club, name)}/change`;
/** What the club measures with. */
export const instrumentsPath = (club: string): string => `${clubPath(club)}/instrument`;
export const instrumentPath = (club: string, id: string, query: { readonly saved?: string } = {}): string =>
  withQuery(`${instrumentsPath(club)}/${part(id)}`, query);
export const newPartPath = (club: string): string => `${clubPath(club)}/new-part`;
/** What a list of what falls due is narrowed to. */
export interface DueQuery {
  readonly series?: string;
  readonly kind?: string;
  readonly standing?: string;
  /** ISO days. */
  readonly from?: string;
  readonly to?: string;
}
/** What falls due across the fleet; `after` and `at` say after which line the page begins. */
export const duePath = (
  club: string,
  query: DueQuery & { readonly after?: string; readonly at?: string } = {},
): string => withQuery(`${fleetPath(club)}/due`, { ...query });
/** The same as a calendar, month by month. */
export const dueMonthPath = (
  club: string,
  query: Pick<DueQuery, "series" | "kind"> & { readonly month?: string } = {},
): string => withQuery(`${fleetPath(club)}/due/calendar`, { ...query });
/** Private links by which a calendar program reads it. */
export const feedsPath = (club: string, query: { readonly takenBack?: "yes" } = {}): string =>
  withQuery(`${fleetPath(club)}/due/link`, query);
/** What such a link is, behind the origin. */
export const calendarFilePath = (token: string): string => `/api/calendar/${part(token)}.ics`;
/** Parts that are hard to find, and the cars that depend on them. */
export const scarcePartsPath = (club: string, query: { readonly part?: string } = {}): string =>
  withQuery(`${fleetPath(club)}/part`, query);
/** What was built, is known of and in use, and which records are thin. */
export const survivalPath = (club: string, query: { readonly series?: string } = {}): string =>
  withQuery(`${fleetPath(club)}/survival`, query);
