import type { PersonChoice } from "@trunnion/api";
import { ChoiceField, TextArea, TextField, TickField } from "../../../components/form/form-field";
import { editPartPath, keeperDataPath } from "../../../lib/path";
import { removeKeepership, saveKeepership } from "./keeper-action";
import { ProvenanceFields } from "./provenance-fields";
import { type PartProps, RecordForm, RecordFrame, RemoveForm } from "./record-frame";
import { dateHint } from "./words";

export interface PersonFieldsProps {
  readonly members: readonly PersonChoice[];
  readonly person?: {
    readonly name: string;
    readonly address: string;
    readonly email: string;
    readonly phone: string;
    readonly membershipId: string;
  };
}

/** Who a keeper is. Personal data. */
export function PersonFields({ members, person }: PersonFieldsProps) {
  const choices = [
    { value: "", label: "Does not sign in here" },
    ...members.map(({ id, name }) => ({ value: id, label: name })),
  ];
  return (
    <div className="grid gap-4 sm:grid-cols-2">
      <TextField name="name" label="Name" value={person?.name ?? ""} maxLength={120} />
      <TextField name="email" label="E-mail" value={person?.email ?? ""} type="email" maxLength={254} />
      <TextArea name="address" label="Address" value={person?.address ?? ""} rows={3} maxLength={400} />
      <TextField name="phone" label="Telephone" value={person?.phone ?? ""} type="tel" maxLength={60} />
      <ChoiceField
        name="membership"
        label="Member"
        value={person?.membershipId ?? ""}
        options={choices}
        hint="A member has the cars he keeps in his own list, and may correct his contact data."
      />
    </div>
  );
}

interface SpanFieldsProps {
  readonly from: string;
  readonly to: string;
}

function SpanFields({ from, to }: SpanFieldsProps) {
  return (
    <div className="grid gap-4 sm:grid-cols-2">
      <TextField name="from" label="Kept from" value={from} hint={dateHint} maxLength={60} />
      <TextField name="to" label="Kept until" value={to} hint="Empty for who keeps it now." maxLength={60} />
    </div>
  );
}

export interface AddKeeperProps extends PartProps {
  readonly keepers: readonly PersonChoice[];
  readonly members: readonly PersonChoice[];
}

/** The form that adds somebody who keeps or kept a car. */
export function AddKeeper({ club, car, keepers, members }: AddKeeperProps) {
  const known = [
    { value: "", label: "Somebody new" },
    ...keepers.map(({ id, name }) => ({ value: id, label: name })),
  ];
  return (
    <RecordFrame club={club} car={car} title="Add a keeper" section="keeper">
      <RecordForm
        club={club}
        car={car}
        action={saveKeepership.bind(null, club.slug, car.reference, undefined)}
        submit="Add the keeper"
        section="keeper"
        opened={{}}
        labels={{ name: "Name", from: "Kept from", to: "Kept until", keeper: "Keeper", membership: "Member" }}
      >
        <ChoiceField
          name="keeper"
          label="Keeper"
          value=""
          options={known}
          hint="Somebody the register knows from another car, or somebody new, named below."
        />
        <PersonFields members={members} />
        <SpanFields from="" to="" />
        <TickField
          name="together"
          label="Keeps it together with the present keeper"
          hint="Otherwise a keeper without an end takes the place of the present one."
        />
        <ProvenanceFields sources={car.sources} />
      </RecordForm>
    </RecordFrame>
  );
}

/** The form over when somebody kept a car. */
export function KeepershipForm({ club, car, row: id }: PartProps) {
  const row = car.keepers.find((one) => one.id === id);
  if (row === undefined) return <p>This keeper is not on the record any more.</p>;
  const { from, to, source, locus, trust } = row;
  return (
    <RecordFrame club={club} car={car} title={`When ${row.name} kept it`} section="keeper">
      <RecordForm
        club={club}
        car={car}
        action={saveKeepership.bind(null, club.slug, car.reference, row.id)}
        submit="Save"
        section="keeper"
        opened={{ from, to, source, locus, trust }}
        labels={{ from: "Kept from", to: "Kept until" }}
      >
        <SpanFields from={from} to={to} />
        <ProvenanceFields sources={car.sources} known={row} />
      </RecordForm>
      {row.erased ? null : (
        <p className="flex flex-wrap gap-x-6 gap-y-2">
          <a href={editPartPath(club.slug, car.reference, "person", { row: row.keeperId })}>
            Name, address and membership
          </a>
          <a href={keeperDataPath(club.slug, row.keeperId)}>Everything held of this person (JSON)</a>
        </p>
      )}
      <RemoveForm
        club={club}
        car={car}
        action={removeKeepership.bind(null, club.slug, car.reference, row.id)}
        title="Take it away"
        text="For somebody who never kept this car. Who kept it once gets a day until which he did instead."
      />
    </RecordFrame>
  );
}
