import type { KeeperDetail, PersonChoice } from "@trunnion/api";
import { EditForm } from "../../../components/form/edit-form";
import { SectionHead } from "../../../components/page-head";
import { carPath, keeperDataPath } from "../../../lib/path";
import { erasePerson, savePerson } from "./keeper-action";
import { PersonFields } from "./keeper-form";
import { type PartProps, RecordForm, RecordFrame } from "./record-frame";

export interface PersonFormProps extends PartProps {
  readonly keeper: KeeperDetail;
  readonly members: readonly PersonChoice[];
}

/** The form over who a keeper is, and the way to erase the person. Personal data. */
export function PersonForm({ club, car, keeper, members }: PersonFormProps) {
  const { name, address, email, phone } = keeper;
  return (
    <RecordFrame club={club} car={car} title={keeper.erased ? "Erased keeper" : name} section="keeper">
      {keeper.erased ? (
        <p>The personal data of this keeper were erased.</p>
      ) : (
        <>
          <RecordForm
            club={club}
            car={car}
            action={savePerson.bind(null, club.slug, car.reference, keeper.id)}
            submit="Save"
            section="keeper"
            opened={{ name, address, email, phone }}
            labels={{ name: "Name", email: "E-mail", membership: "Member" }}
          >
            <PersonFields members={members} person={keeper} />
          </RecordForm>
          <Erase club={club} car={car} keeper={keeper} />
        </>
      )}
    </RecordFrame>
  );
}

function Erase({ club, car, keeper }: Omit<PersonFormProps, "members">) {
  const { mentions } = keeper;
  return (
    <section aria-labelledby="erase" className="grid gap-4">
      <SectionHead id="erase" title="The person's request" />
      <p>
        <a href={keeperDataPath(club.slug, keeper.id)}>Everything held of this person (JSON)</a>, to hand
        over.
      </p>
      <p className="max-w-prose">
        Erasing takes name, address, e-mail, telephone and the link to a membership away for good, from what
        readings-in kept for undoing too. When the car was kept stays. An account to sign in with stays: take
        the membership away for that.
      </p>
      {mentions.length === 0 ? null : (
        <>
          <p className="max-w-prose font-semibold">
            Free text names this person, which erasing does not reach:
          </p>
          <ul className="list-disc pl-5">
            {mentions.map(({ reference, where }) => (
              <li key={`${reference} ${where}`}>
                <a href={carPath(club.slug, reference)}>{reference}</a>, {where}
              </li>
            ))}
          </ul>
        </>
      )}
      <EditForm
        action={erasePerson.bind(null, club.slug, car.reference, keeper.id)}
        submit="Erase for good"
        weight="plain"
      >
        <div className="grid gap-1">
          <label htmlFor="erase-reason" className="font-semibold">
            Why
          </label>
          <input id="erase-reason" name="reason" maxLength={500} className="field" />
          <p className="text-fine text-soft">How the request came, without naming the person.</p>
        </div>
      </EditForm>
    </section>
  );
}
