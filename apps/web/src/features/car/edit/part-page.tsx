import type { CarForm, CharacteristicChoice, createCaller, KeeperDetail, PersonChoice } from "@trunnion/api";
import { refused } from "@trunnion/register";
import type { ClubFace } from "../../../components/shell/shell";
import { AsBuiltForm, AsBuiltSearch } from "./as-built-form";
import { FiledForm } from "./filed-form";
import { IdentityForm } from "./identity-form";
import { AddKeeper, KeepershipForm } from "./keeper-form";
import { NoteForm } from "./note-form";
import { OptionForm } from "./option-form";
import { PersonForm } from "./person-form";
import type { PartProps } from "./record-frame";
import { StatusForm } from "./status-form";

const parts = ["filed", "identity", "status", "option", "keeper", "person", "as-built", "note"] as const;
type Part = (typeof parts)[number];
type Query = Readonly<Record<string, string>>;

/** Whether an address names a part of a record. */
export const isPart = (name: string): name is Part => parts.some((part) => part === name);

/** A part of a record with what its form chooses from. */
export interface LoadedPart {
  readonly part: Part;
  readonly car: CarForm;
  readonly keepers?: readonly PersonChoice[];
  readonly members?: readonly PersonChoice[];
  readonly keeper?: KeeperDetail;
  readonly characteristic?: CharacteristicChoice;
  readonly found?: readonly CharacteristicChoice[];
}

interface Asked {
  readonly club: string;
  readonly car: string;
  readonly part: Part;
  readonly query: Query;
}

const gone = (what: string, car: string) => refused("ROW_NOT_FOUND", { what, car });

/** What the form over a part of a record needs; a row or person that is not there is refused. */
export async function loadPart(
  api: ReturnType<typeof createCaller>,
  { club, car: reference, part, query }: Asked,
): Promise<LoadedPart> {
  const car = await api.record.form({ club, car: reference });
  const { row = "", characteristic: key = "", q = "" } = query;
  if (part === "keeper" && row === "") return { part, car, ...(await api.keeper.choices({ club })) };
  if (part === "person") {
    if (!car.keepers.some(({ keeperId }) => keeperId === row)) throw gone("keeper", reference);
    return { part, car, ...(await api.keeper.detail({ club, keeper: row })) };
  }
  if (part === "as-built" && key !== "") {
    const characteristic = await api.record.characteristic({ club, key });
    if (characteristic === null) throw gone("characteristic", reference);
    return { part, car, characteristic };
  }
  if (part === "as-built")
    return { part, car, found: await api.record.findCharacteristics({ club, search: q }) };
  if (row !== "" && !hasRow(car, part, row)) throw gone("line", reference);
  return { part, car };
}

function hasRow(car: CarForm, part: Part, id: string): boolean {
  const rows = {
    identity: car.identities,
    status: car.statuses,
    note: car.notes,
    keeper: car.keepers,
  } as const;
  return part in rows && rows[part as keyof typeof rows].some((row) => row.id === id);
}

interface PartPageProps {
  readonly club: ClubFace;
  readonly loaded: LoadedPart;
  readonly query: Query;
}

/** The form over one part of a car's record. */
export function PartPage({ club, loaded, query }: PartPageProps) {
  const { part, car, keepers = [], members = [], keeper, characteristic, found = [] } = loaded;
  const { row } = query;
  const props: PartProps = { club, car, ...(row === undefined || row === "" ? {} : { row }) };
  switch (part) {
    case "filed":
      return <FiledForm {...props} typed={query} />;
    case "identity":
      return <IdentityForm {...props} />;
    case "status":
      return <StatusForm {...props} />;
    case "option":
      return <OptionForm {...props} />;
    case "note":
      return <NoteForm {...props} />;
    case "keeper":
      if (props.row !== undefined) return <KeepershipForm {...props} />;
      return <AddKeeper {...props} keepers={keepers} members={members} />;
    case "person":
      return keeper === undefined ? null : <PersonForm {...props} keeper={keeper} members={members} />;
    case "as-built":
      if (characteristic !== undefined) return <AsBuiltForm {...props} characteristic={characteristic} />;
      return <AsBuiltSearch {...props} query={query.q ?? ""} found={found} />;
  }
}
