import { Prisma } from "@trunnion/db";
import { type CarStatus, carStatusWords, derivedHeadings } from "@trunnion/register";
import type { Context } from "../context";
import { choiceAsked, chosenCarIds, foundCars, type RegisterListRow } from "../register-list";
import { requireRole } from "../role";
import { kept, type ListExport, type ListInput, type Told } from "./policy";

/** Cars looked up at once. */
const CARS = 500;

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
const carColumns: readonly Told<CarRow>[] = [
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

/** Every column the importer of a register reads, by chassis number. */
export async function carList(ctx: Context, input: ListInput): Promise<ListExport> {
  if (input.personalData) requireRole(ctx.actor, "registrar", "fleetManager");
  const choice = await choiceAsked(ctx, input);
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

const foundColumns: readonly Told<RegisterListRow>[] = [
  { label: "Chassis", of: ({ chassis }) => chassis },
  { label: "Claim", of: ({ claim }) => claim },
  { label: "Series", of: ({ series }) => series },
  { label: "Built", of: ({ built }) => built },
  { label: "Colour", of: ({ colour }) => colour },
  { label: "Registration", of: ({ registration }) => registration },
  { label: "Status", of: ({ status }) => carStatusWords[status] },
];
const differs: readonly Told<RegisterListRow>[] = [
  { label: derivedHeadings.differing, of: ({ deviating }) => deviating },
  { label: derivedHeadings.compared, of: ({ compared }) => compared },
];

/** What the register page shows, to the last page of it. */
export async function foundList(ctx: Context, input: ListInput): Promise<ListExport> {
  // Names go into a file only where that is asked for by itself.
  const shown = (input.columns ?? []).filter((key) => input.personalData || key !== "car.keeper");
  const found = await foundCars(ctx, { ...input, columns: shown });
  const beside = found.columns.map(
    ({ key, label }): Told<RegisterListRow> => ({ label, of: ({ values }) => values[key] ?? null }),
  );
  const { columns, cells } = kept([...foundColumns, ...beside, ...differs], false);
  async function* rows() {
    for await (const row of found.rows) yield cells(row);
  }
  return { name: `${ctx.club.slug}-found-cars`, title: "Cars found", columns, rows: rows() };
}
