import { assemblyLabels, type DeviationLine, deviationLine, refused, stateKey } from "@trunnion/register";
import { assessAll } from "../assessment";
import { findCar } from "../car";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { entriesOf, findEvent } from "../event";
import { journalPage } from "../journal";
import { requireRole } from "../role";
import { carList, foundList } from "./car";
import { kept, type ListExport, type ListInput, type Told } from "./policy";

interface StateRow extends DeviationLine {
  /** SI number of a quantity. */
  readonly si: number | null;
}

const stateColumns: readonly Told<StateRow>[] = [
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

const journalColumns: readonly Told<Item>[] = [
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

const entryColumns: readonly Told<EntryRow>[] = [
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

const lists = {
  cars: carList,
  found: foundList,
  state: stateList,
  journal: journalList,
  entries: entryList,
} as const;

/** Lists there are: the register's cars whole, those found as the register page shows them, one car's state and deviations, the journal of club or car, an event's entries. */
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
