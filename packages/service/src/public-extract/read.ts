import { siUnits } from "@trunnion/calc";
import type { Database, Prisma } from "@trunnion/db";
import {
  type CharacteristicBook,
  carStatusWords,
  chassisKey,
  type ExtractCar,
  type ExtractPart,
  type ExtractValue,
  extractParts,
  type PartialDate,
  parsePartialDate,
  printValue,
  refused,
} from "@trunnion/register";
import { bookOf } from "../characteristic";
import type { Context } from "../context";
import { openVisitor } from "../gate";
import { carReference } from "../record";
import { requireRole } from "../role";
import { standingRecord } from "../standing-record";
import { type ValueColumns, valueFrom } from "../value-columns";
import { EXTRACT_PAGE } from "./policy";

/** What a club chose to show. */
export interface ExtractChoice {
  readonly open: boolean;
  readonly parts: readonly ExtractPart[];
  readonly characteristics: readonly string[];
  /** Short names of series; none named: all. */
  readonly series: readonly string[];
  readonly lead: string;
  /** 0 where nothing was chosen yet. */
  readonly version: number;
}

const nothing: ExtractChoice = {
  open: false,
  parts: [],
  characteristics: [],
  series: [],
  lead: "",
  version: 0,
};

export async function choiceOf(ctx: Context): Promise<ExtractChoice> {
  const row = await ctx.db.publicExtract.findUnique({ where: { clubId: ctx.club.id } });
  if (!row) return nothing;
  const { open, characteristics, series, lead, version } = row;
  const parts = extractParts.filter((part) => row.parts.includes(part));
  return { open, parts, characteristics, series, lead: lead ?? "", version };
}

/**
 * What the club shows now, with what there is to choose from.
 *
 * @throws Refusal ROLE_NEEDED
 */
export async function extractSettings(ctx: Context) {
  requireRole(ctx.actor, "registrar", "fleetManager");
  const book = await bookOf(ctx);
  const series = await ctx.db.series.findMany({
    select: { slug: true, name: true },
    orderBy: { ordinal: "asc" },
  });
  return {
    choice: await choiceOf(ctx),
    series,
    characteristics: book.all
      .filter(({ key }) => !key.includes(".hardpoint."))
      .map(({ key, label, assembly }) => ({ key, label, assembly })),
  };
}

/** Opens a club for whoever comes, if it shows anything: which clubs exist otherwise is nobody's business. */
async function openExtract<T>(
  database: Database,
  club: string,
  work: (ctx: Context, choice: ExtractChoice) => Promise<T>,
): Promise<T> {
  return openVisitor(database, club, async (ctx) => {
    const choice = ctx && (await choiceOf(ctx));
    if (!ctx || !choice?.open) throw refused("EXTRACT_NOT_OPEN", { club });
    return work(ctx, choice);
  });
}

const valueFields = {
  characteristic: true,
  side: true,
  valueKind: true,
  entered: true,
  number: true,
  resolution: true,
  text: true,
} as const;

const shownFields = {
  id: true,
  chassis: true,
  claim: true,
  builtText: true,
  firstRegisteredText: true,
  series: {
    select: {
      name: true,
      marque: { select: { name: true } },
      options: { select: { code: true, label: true } },
    },
  },
  statuses: { where: { to: null }, select: { status: true } },
  options: { select: { code: true }, orderBy: { code: "asc" } },
  identities: {
    where: { kind: { in: ["commission", "engine", "body"] }, standing: "accepted", toLatest: null },
    select: { kind: true, number: true },
    orderBy: [{ kind: "asc" }, { id: "desc" }],
  },
} satisfies Prisma.CarSelect;

type ShownRow = Prisma.CarGetPayload<{ select: typeof shownFields }>;

function partialOf(text: string | null, today: string): PartialDate | undefined {
  const parsed = text === null ? undefined : parsePartialDate(text, { today });
  return parsed?.ok ? parsed.date : undefined;
}

type StoredValue = ValueColumns & { readonly characteristic: string; readonly side: ExtractValue["side"] };

function valuesOf(rows: readonly StoredValue[], book: CharacteristicBook, { club }: Context): ExtractValue[] {
  return rows.flatMap((row): ExtractValue[] => {
    const characteristic = book.find(row.characteristic);
    if (!characteristic) return [];
    const value = valueFrom(row);
    const unit = characteristic.kind === "quantity" ? siUnits[characteristic.dimension] : "";
    return [
      {
        characteristic: row.characteristic,
        label: characteristic.label,
        side: row.side,
        text: printValue(characteristic, value, { system: club.unitSystem }),
        ...(value.kind === "quantity" ? { si: value.si, ...(unit === "" ? {} : { unit }) } : {}),
      },
    ];
  });
}

function factsOf(row: ShownRow, { parts }: ExtractChoice, today: string): ExtractCar {
  const has = (part: ExtractPart) => parts.includes(part);
  const built = has("built") ? partialOf(row.builtText, today) : undefined;
  const first = has("firstRegistered") ? partialOf(row.firstRegisteredText, today) : undefined;
  const labels = new Map(row.series?.options.map(({ code, label }) => [code, label]));
  return {
    reference: carReference(row),
    chassis: row.chassis,
    marque: row.series?.marque.name ?? "",
    series: row.series?.name ?? "series not settled",
    ...(built === undefined ? {} : { built }),
    ...(first === undefined ? {} : { firstRegistered: first }),
    ...(has("status") ? { status: carStatusWords[row.statuses[0]?.status ?? "unknown"] } : {}),
    ...(has("numbers") ? { numbers: row.identities } : {}),
    ...(has("options") ? { options: row.options.map(({ code }) => labels.get(code) ?? code) } : {}),
  };
}

const ofSeries = ({ series }: ExtractChoice): Prisma.CarWhereInput => ({
  ...standingRecord,
  ...(series.length === 0 ? {} : { series: { slug: { in: [...series] } } }),
});

export interface ExtractListInput {
  readonly club: string;
  /** Reference of the last car of the page before. */
  readonly after?: string | undefined;
}

/**
 * One page of a club's public cars, for whoever comes.
 *
 * @throws Refusal EXTRACT_NOT_OPEN, also for a club that does not exist
 */
export function extractList(database: Database, { club, after }: ExtractListInput) {
  return openExtract(database, club, async (ctx, choice) => {
    const where = ofSeries(choice);
    const [key = "", claim = "1"] = (after ?? "").split("~");
    const past: Prisma.CarWhereInput =
      after === undefined
        ? {}
        : {
            OR: [
              { chassisKey: { gt: chassisKey(key) } },
              { chassisKey: chassisKey(key), claim: { gt: /^[1-9]$/.test(claim) ? Number(claim) : 0 } },
            ],
          };
    const rows = await ctx.db.car.findMany({
      where: { AND: [where, past] },
      select: shownFields,
      orderBy: [{ chassisKey: "asc" }, { claim: "asc" }],
      take: EXTRACT_PAGE + 1,
    });
    const cars = rows.slice(0, EXTRACT_PAGE).map((row) => factsOf(row, choice, ctx.today));
    const last = cars.at(-1);
    return {
      club: { slug: ctx.club.slug, name: ctx.club.name },
      lead: choice.lead,
      total: await ctx.db.car.count({ where }),
      cars,
      ...(rows.length > EXTRACT_PAGE && last ? { next: last.reference } : {}),
    };
  });
}

/**
 * One public car, for whoever comes: what the club chose, and nothing of any person.
 *
 * @throws Refusal EXTRACT_NOT_OPEN; CAR_NOT_FOUND, also for a car of a series that is not shown
 */
export function extractCar(
  database: Database,
  { club, car }: { readonly club: string; readonly car: string },
) {
  return openExtract(database, club, async (ctx, choice) => {
    const [key = "", claim = "1"] = car.split("~");
    const row = await ctx.db.car.findFirst({
      where: {
        AND: [
          ofSeries(choice),
          { chassisKey: chassisKey(key), claim: /^[1-9]$/.test(claim) ? Number(claim) : 0 },
        ],
      },
      select: shownFields,
    });
    if (!row) throw refused("CAR_NOT_FOUND", { car });
    const book = await bookOf(ctx);
    const shown = { carId: row.id, characteristic: { in: [...choice.characteristics] } };
    const order = [{ characteristic: "asc" as const }, { side: "asc" as const }];
    const asBuilt = choice.parts.includes("asBuilt")
      ? await ctx.db.asBuiltValue.findMany({
          where: { ...shown, supersededAt: null },
          select: valueFields,
          orderBy: order,
        })
      : undefined;
    const today = choice.parts.includes("today")
      ? await ctx.db.currentValue.findMany({
          where: shown,
          select: valueFields,
          orderBy: order,
        })
      : undefined;
    return {
      club: { slug: ctx.club.slug, name: ctx.club.name },
      sideWords: ctx.club.sideWords,
      car: {
        ...factsOf(row, choice, ctx.today),
        ...(asBuilt === undefined ? {} : { asBuilt: valuesOf(asBuilt, book, ctx) }),
        ...(today === undefined ? {} : { today: valuesOf(today, book, ctx) }),
      } satisfies ExtractCar,
    };
  });
}
