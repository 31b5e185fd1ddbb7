import { type CarStatus, carStatusWords } from "@trunnion/register";
import { type Definition, DefinitionTable } from "../../components/definition-table";

/** A number or mark the car bears or bore. */
export interface CarNumber {
  readonly kind: "chassis" | "commission" | "engine" | "body" | "registration";
  readonly number: string;
  readonly standing: "accepted" | "disputed" | "restamped";
  /** As written; left out where not known. */
  readonly from?: string;
  readonly to?: string;
}

/** Who a car is. Dates are as written in the record; an empty text is said to be not recorded. */
export interface CarFace {
  readonly reference: string;
  readonly chassis: string;
  readonly claim: number;
  /** How many cars claim this number. */
  readonly claims: number;
  readonly marque: string;
  readonly series: string;
  readonly built: string;
  readonly firstRegistered: string;
  readonly status: CarStatus;
  readonly statusSince?: string;
  readonly options: readonly string[];
  readonly numbers: readonly CarNumber[];
  /** Further lines: body, colour, keeper as far as the reader may see it. */
  readonly more: readonly Definition[];
  readonly remarks?: string;
  readonly version: number;
}

const kinds: Readonly<Record<CarNumber["kind"], string>> = {
  chassis: "Also stamped",
  commission: "Commission",
  engine: "Engine",
  body: "Body",
  registration: "Registration",
};

function sayNumber({ number, standing, from, to }: CarNumber): string {
  const span =
    from === undefined && to === undefined ? "" : ` (${from ?? ""} to ${to ?? "now"})`.replace("( to", "(to");
  const doubt = standing === "accepted" ? "" : standing === "disputed" ? ", disputed" : ", re-stamped";
  return `${number}${span}${doubt}`;
}

function rowsOf(car: CarFace): readonly Definition[] {
  const status =
    carStatusWords[car.status] + (car.statusSince === undefined ? "" : `, since ${car.statusSince}`);
  const others = car.numbers.filter(({ kind, number }) => kind !== "chassis" || number !== car.chassis);
  return [
    { label: "Built", value: car.built },
    { label: "First registered", value: car.firstRegistered },
    { label: "Status", value: status },
    ...others.map((number) => ({ label: kinds[number.kind], value: sayNumber(number) })),
    ...car.more,
    ...(car.options.length === 0 ? [] : [{ label: "Options", value: car.options.join(", ") }]),
    ...(car.remarks === undefined || car.remarks === "" ? [] : [{ label: "Remarks", value: car.remarks }]),
  ];
}

/** Who the car is. */
export function Identity({ car }: { readonly car: CarFace }) {
  return (
    <section aria-label="Identity">
      <DefinitionTable rows={rowsOf(car)} />
    </section>
  );
}
