import type { OwnCharacteristic } from "@trunnion/api";
import { assemblyLabels } from "@trunnion/register";
import { LinkButton } from "../../components/button";
import { EditForm } from "../../components/form/edit-form";
import { TextField } from "../../components/form/form-field";
import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import {
  characteristicPath,
  characteristicsPath,
  newCharacteristicPath,
  specificationsPath,
} from "../../lib/path";
import { addCharacteristic, changeCharacteristic } from "./action";
import { CharacteristicFields } from "./characteristic-field";
import { characteristicLabels } from "./characteristic-label";

export interface ListPageProps {
  readonly club: ClubFace;
  readonly own: readonly OwnCharacteristic[];
  readonly mayEdit: boolean;
}

const values = (count: number) => (count === 1 ? "1 value" : `${count} values`);

/** The club's own characteristics, with how much is recorded of each. */
export function CharacteristicListPage({ club, own, mayEdit }: ListPageProps) {
  return (
    <>
      <PageHead
        title="The club's own characteristics"
        back={{ href: specificationsPath(club.slug), label: "Specifications" }}
        lead="Beside the built-in dictionary, and behaving like it in every screen, table and sheet"
      >
        {mayEdit ? (
          <LinkButton href={newCharacteristicPath(club.slug)}>Add a characteristic</LinkButton>
        ) : null}
      </PageHead>
      {own.length === 0 ? (
        <p>The club has none of its own.</p>
      ) : (
        <table className="list-table">
          <caption className="sr-only">The club's own characteristics</caption>
          <thead>
            <tr>
              <th scope="col">Characteristic</th>
              <th scope="col">Key</th>
              <th scope="col">Assembly</th>
              <th scope="col">Kind</th>
              <th scope="col">Recorded</th>
            </tr>
          </thead>
          <tbody>
            {own.map(({ characteristic, use }) => (
              <tr key={characteristic.key}>
                <th scope="row" className="list-lead font-normal">
                  {mayEdit ? (
                    <a
                      href={characteristicPath(club.slug, characteristic.key)}
                      className="inline-flex min-h-11 items-center"
                    >
                      {characteristic.label}
                    </a>
                  ) : (
                    characteristic.label
                  )}
                </th>
                <td>
                  <code>{characteristic.key}</code>
                </td>
                <td>{assemblyLabels[characteristic.assembly]}</td>
                <td>{characteristic.kind}</td>
                <td>{use.values === 0 ? <span className="text-soft">nothing</span> : values(use.values)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}

/** The form of a new characteristic. */
export function NewCharacteristicPage({ club }: { readonly club: ClubFace }) {
  const back = { href: characteristicsPath(club.slug), label: "The club's own characteristics" };
  return (
    <>
      <PageHead
        title="Add a characteristic"
        back={back}
        lead="One thing that can be specified, recorded or measured on a car"
      />
      <EditForm
        action={addCharacteristic.bind(null, club.slug)}
        submit="Add the characteristic"
        cancel={{ ...back, label: "Back without saving" }}
        labels={characteristicLabels}
      >
        <CharacteristicFields fixed={false} />
        <TextField
          name="key"
          label="Key"
          maxLength={120}
          hint="Two or more dotted words, for files and conditions: club.fogLamps. Empty: made of the label. It stays for good."
        />
      </EditForm>
    </>
  );
}

export interface CharacteristicPageProps {
  readonly club: ClubFace;
  readonly page: OwnCharacteristic & { readonly texts: Readonly<Record<string, string>> };
}

/** The form of a characteristic there is. */
export function CharacteristicPage({ club, page }: CharacteristicPageProps) {
  const { characteristic, use, version, texts } = page;
  const back = { href: characteristicsPath(club.slug), label: "The club's own characteristics" };
  return (
    <>
      <PageHead
        title={characteristic.label}
        back={back}
        lead={`${characteristic.key}; ${use.values === 0 ? "nothing recorded yet" : `${values(use.values)} recorded`}`}
      />
      <EditForm
        action={changeCharacteristic.bind(null, club.slug, characteristic.key)}
        submit="Save the characteristic"
        version={version}
        cancel={{ ...back, label: "Back without saving" }}
        labels={characteristicLabels}
      >
        {Object.entries(texts).map(([field, value]) => (
          <input key={field} type="hidden" name={`opened.${field}`} value={value} />
        ))}
        <CharacteristicFields of={characteristic} fixed={use.values > 0} />
        <TextField name="reason" label="Why" hint="For the journal." maxLength={500} />
      </EditForm>
    </>
  );
}
