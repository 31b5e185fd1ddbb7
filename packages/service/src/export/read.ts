import { Prisma } from "@trunnion/db";
import {
  assemblyLabels,
  type CarStatus,
  type Condition,
  carStatusWords,
  type DeviationLine,
  derivedHeadings,
  deviationLine,
  refused,
  stateKey,
} from "@trunnion/register";
import { assessAll } from "../assessment";
import { findCar } from "../car";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { entriesOf, findEvent } from "../event";
import { filterNamed } from "../filter";
import { journalPage } from "../journal";
import { chosenCarIds, type FacetPick, type Shown } from "../register-list";
import { requireRole } from "../role";
import type { Cell, ListColumn, ListExport } from "./policy";

/** Which list, and of what. */
export interface ListInput extends FacetPick {
  readonly list: string;
  /** Columns of personal data too, for those allowed. */
  readonly personalData: boolean;
  /** Of the list of cars: as on the register page. */
  readonly search?: string;
  readonly series?: string;
  readonly condition?: Condition;
  /** Name of a saved filter, own or shared; instead of a condition. */
  readonly filter?: string;
  /** Cars that fit when left out; else those of which the record does not say. */
  readonly show?: Shown;
  /** Reference of the car the list is of. */
  readonly car?: string;
  /** Short name of the event the list is of. */
  readonly event?: string;
}

/** Cars looked up at once. */
const CARS = 500;

/** Leaves out what is personal, where it is not asked for. */
function kept<R>(
  columns: readonly (ListColumn & { readonly of: (row: R) => Cell })[],
  personalData: boolean,
): { readonly columns: readonly ListColumn[]; readonly cells: (row: R) => readonly Cell[] } {
  const shown = columns.filter(({ personal }) => personalData || !personal);
  return { columns: shown, cells: (row) => shown.map(({ of }) => of(row)) };
}

interface CarRow {
  readonly chassis: string;
  readonly claim: number;
  readonly series: string | null;
  readonly built: string | null;
  readonly firstRegistered: string | null;
  readonly status: CarStatus | null;
  readonly statusSince: string | null;
  readonly numbers: Readonly<Partial<Record<string, string>>> | null;
  readonly options: string | null;
  readonly colour: string | null;
  readonly differing: number;
  readonly compared: number;
  readonly remarks: string | null;
  readonly keeper: string | null;
  readonly address: string | null;
  readonly email: string | null;
  readonly phone: string | null;
  readonly keptSince: string | null;
}

// Headings as the importer of a register reads them, so that what went out may come in again.
const carColumns: readonly (ListColumn & { readonly of: (row: CarRow) => Cell })[] = [
  { label: "Chassis", of: ({ chassis }) => chassis },
  { label: "Claim", of: ({ claim }) => claim },
  { label: "Series", of: ({ series }) => series },
  { label: "Commission no", of: ({ numbers }) => numbers?.commission ?? null },
  { label: "Engine no", of: ({ numbers }) => numbers?.engine ?? null },
  { label: "Body no", of: ({ numbers }) => numbers?.body ?? null },
  { label: "Registration", of: ({ numbers }) => numbers?.registration ?? null },
  { label: "Built", of: ({ built }) => built },
  { label: "First registered", of: ({ firstRegistered }) => firstRegistered },
  { label: "Status", of: ({ status }) => (status === null ? null : carStatusWords[status]) },
  { label: "Status since", of: ({ statusSince }) => statusSince },
  { label: "Options", of: ({ options }) => options },
  { label: "now: Body colour", of: ({ colour }) => colour },
  { label: derivedHeadings.differing, of: ({ differing }) => differing },
  { label: derivedHeadings.compared, of: ({ compared }) => compared },
  { label: "Remarks", of: ({ remarks }) => remarks },
  { label: "Keeper", personal: true, of: ({ keeper }) => keeper },
  { label: "Keeper address", personal: true, of: ({ address }) => address },
  { label: "Keeper e-mail", personal: true, of: ({ email }) => email },
  { label: "Keeper telephone", personal: true, of: ({ phone }) => phone },
  { label: "Kept since", personal: true, of: ({ keptSince }) => keptSince },
];

/** Rows of some cars, by chassis number. */
function carRows(ids: readonly string[]): Prisma.Sql {
  return Prisma.sql`
    SELECT c.chassis, c.claim, s.slug AS series, c.built_text AS built, c.first_registered_text AS "firstRegistered",
      t.status::text AS status, t.from_text AS "statusSince", c.remarks,
      (SELECT jsonb_object_agg(i.kind, i.number) FROM (
        SELECT DISTINCT ON (kind) kind, number FROM car_identity WHERE car_id = c.id ORDER BY kind, id DESC) i) AS numbers,
      (SELECT string_agg(o.code, ' ' ORDER BY o.code) FROM car_option o WHERE o.car_id = c.id) AS options,
      (SELECT v.entered FROM current_value v WHERE v.car_id = c.id AND v.characteristic = 'body.colour' AND v.side = 'whole') AS colour,
      d.differing, d.compared, k.name AS keeper, k.address, k.email, k.phone, k.from_text AS "keptSince"
    FROM car c
    LEFT JOIN series s ON s.id = c.series_id
    LEFT JOIN LATERAL (SELECT status, from_text FROM car_status_span WHERE car_id = c.id AND "to" IS NULL ORDER BY id DESC LIMIT 1) t ON TRUE
    LEFT JOIN LATERAL (SELECT count(*) FILTER (WHERE verdict NOT IN ('asSpecified', 'insideLimits'))::int AS differing, count(*)::int AS compared
      FROM current_value WHERE car_id = c.id AND verdict <> 'notRecorded') d ON TRUE
    LEFT JOIN LATERAL (SELECT p.name, p.address, p.email, p.phone, h.from_text FROM keepership h JOIN keeper p ON p.id = h.keeper_id
      WHERE h.car_id = c.id AND h."to" IS NULL ORDER BY h.id DESC LIMIT 1) k ON TRUE
    WHERE c.id = ANY(${[...ids]}::uuid[]) ORDER BY c.chassis_key, c.claim`;
}

async function carList(ctx: Context, input: ListInput): Promise<ListExport> {
  if (input.personalData) requireRole(ctx.actor, "registrar", "fleetManager");
  const { search, series, filter, status, decade, verdict, modified } = input;
  const condition = filter === undefined ? input.condition : (await filterNamed(ctx, filter)).condition;
  const choice = {
    ...(search === undefined ? {} : { search }),
    ...(series === undefined ? {} : { series }),
    ...(status === undefined ? {} : { status }),
    ...(decade === undefined ? {} : { decade }),
    ...(verdict === undefined ? {} : { verdict }),
    ...(modified === undefined ? {} : { modified }),
    ...(condition === undefined ? {} : { condition }),
  };
  const ids = await chosenCarIds(ctx, choice, input.show);
  const { columns, cells } = kept(carColumns, input.personalData);
  async function* rows() {
    for (let start = 0; start < ids.length; start += CARS) {
      const found = await ctx.db.$queryRaw<CarRow[]>(carRows(ids.slice(start, start + CARS)));
      for (const row of found) yield cells(row);
    }
  }
  return { name: `${ctx.club.slug}-cars`, title: "Register of cars", columns, rows: rows() };
}

interface StateRow extends DeviationLine {
  /** SI number of a quantity. */
  readonly si: number | null;
}

const stateColumns: readonly (ListColumn & { readonly of: (row: StateRow) => Cell })[] = [
  { label: "Assembly", of: ({ assembly }) => assemblyLabels[assembly] },
  { label: "Characteristic", of: ({ label }) => label },
  { label: "Side", of: ({ side }) => side ?? null },
  { label: "Specified", of: ({ specified }) => specified },
  { label: "On the car", of: ({ actual }) => actual },
  { label: "Number", unit: "SI", of: ({ si }) => si },
  { label: "Against factory", of: ({ verdictText }) => verdictText },
  { label: "Difference", of: ({ difference }) => difference },
  { label: "Since", of: ({ since }) => since },
  { label: "Source", of: ({ known }) => known?.source.title ?? null },
  { label: "Trust", of: ({ known }) => known?.source.trust ?? null },
  { label: "Key", of: ({ characteristic }) => characteristic },
];

async function stateList(ctx: Context, { car }: ListInput): Promise<ListExport> {
  if (car === undefined) throw refused("LIST_NEEDS", { list: "state", needs: "car" });
  const record = await findCar(ctx, car);
  const book = await bookOf(ctx);
  const [assessment] = await assessAll(ctx, [record], book, ctx.today);
  if (!assessment) throw new Error(`no assessment of ${car}`);
  const { state, deviations } = assessment;
  const lines = deviations.map((one): StateRow => {
    const value = state.get(stateKey(one.characteristic, one.side))?.value;
    const line = deviationLine(one, book, ctx.club.unitSystem);
    return { ...line, si: value?.kind === "quantity" && line.actual !== "" ? value.si : null };
  });
  const { columns, cells } = kept(stateColumns, false);
  async function* rows() {
    for (const line of lines) yield cells(line);
  }
  const stem = record.reference.replace(/[^A-Za-z0-9]+/g, "-");
  return {
    name: `${ctx.club.slug}-${stem}-state`,
    title: `State of ${record.reference}`,
    columns,
    rows: rows(),
  };
}

type Item = Awaited<ReturnType<typeof journalPage>>["items"][number];

const journalColumns: readonly (ListColumn & { readonly of: (row: Item) => Cell })[] = [
  { label: "Place", of: ({ sequence }) => sequence },
  { label: "At (UTC)", of: ({ at }) => at },
  { label: "Who", personal: true, of: ({ who }) => who.name },
  { label: "What", of: ({ what }) => what },
  { label: "Car", of: ({ car }) => car?.reference ?? null },
  { label: "File", of: ({ file }) => file ?? null },
  { label: "Why", of: ({ reason }) => reason ?? null },
  {
    label: "Changes",
    of: ({ changes }) =>
      changes.map(({ label, before, after }) => `${label}: ${before || "-"} → ${after || "-"}`).join("; "),
  },
];

async function journalList(ctx: Context, { car, personalData }: ListInput): Promise<ListExport> {
  if (personalData) requireRole(ctx.actor, "registrar", "fleetManager");
  const reference = car === undefined ? undefined : (await findCar(ctx, car)).reference;
  const { columns, cells } = kept(journalColumns, personalData);
  async function* rows() {
    for (let before: number | undefined; ; ) {
      const asked = {
        ...(reference === undefined ? {} : { car: reference }),
        ...(before === undefined ? {} : { before }),
      };
      const { items, next } = await journalPage(ctx, asked);
      for (const item of items) yield cells(item);
      if (next === undefined) return;
      before = next;
    }
  }
  const of = reference === undefined ? "" : `-${reference.replace(/[^A-Za-z0-9]+/g, "-")}`;
  return { name: `${ctx.club.slug}${of}-journal`, title: "Journal", columns, rows: rows() };
}

type EntryRow = Awaited<ReturnType<typeof entriesOf>>[number];

const entryColumns: readonly (ListColumn & { readonly of: (row: EntryRow) => Cell })[] = [
  { label: "Number", of: ({ runningNumber }) => runningNumber },
  { label: "Chassis", of: ({ car }) => car?.chassis ?? null },
  { label: "Series", of: ({ car }) => car?.series ?? null },
  { label: "Described as", of: ({ describedAs }) => describedAs },
  { label: "Class", of: ({ className }) => className },
  { label: "Group", of: ({ group }) => group },
  { label: "Driver", personal: true, of: ({ driver }) => driver },
];

async function entryList(ctx: Context, { event, personalData }: ListInput): Promise<ListExport> {
  if (personalData) requireRole(ctx.actor, "registrar", "fleetManager", "scrutineer");
  if (event === undefined) throw refused("LIST_NEEDS", { list: "entries", needs: "event" });
  const found = await findEvent(ctx, event);
  const entries = await entriesOf(ctx, found.id);
  const { columns, cells } = kept(entryColumns, personalData);
  async function* rows() {
    for (const entry of entries) yield cells(entry);
  }
  return {
    name: `${ctx.club.slug}-${found.slug}-entries`,
    title: `Entries of ${found.name}`,
    columns,
    rows: rows(),
  };
}

const lists = { cars: carList, state: stateList, journal: journalList, entries: entryList } as const;

/** Lists there are: the register's cars, one car's state and deviations, the journal of club or car, an event's entries. */
export type ListName = keyof typeof lists;
export const listNames = Object.keys(lists) as readonly ListName[];

const isList = (name: string): name is ListName => Object.hasOwn(lists, name);

/**
 * Opens a list for writing; its rows come within the context's transaction. For every member; columns of personal data
 * for those who may see them, where asked for.
 *
 * @throws Refusal LIST_UNKNOWN, LIST_NEEDS, ROLE_NEEDED, CAR_NOT_FOUND, EVENT_NOT_FOUND, FILTER_NOT_FOUND
 */
export async function openList(ctx: Context, input: ListInput): Promise<ListExport> {
  if (!isList(input.list)) throw refused("LIST_UNKNOWN", { list: input.list, known: listNames });
  return lists[input.list](ctx, input);
}
