import type { CharacteristicChoice } from "@trunnion/api";
import { TextField } from "../../../components/form/form-field";
import { SearchBox } from "../../../components/search-box";
import { editPartPath } from "../../../lib/path";
import { setAsBuilt } from "./action";
import { ProvenanceFields } from "./provenance-fields";
import { type PartProps, RecordForm, RecordFrame } from "./record-frame";

export interface AsBuiltSearchProps extends PartProps {
  readonly query: string;
  readonly found: readonly CharacteristicChoice[];
}

/** Finds the characteristic that a works record speaks of. */
export function AsBuiltSearch({ club, car, query, found }: AsBuiltSearchProps) {
  const path = editPartPath(club.slug, car.reference, "as-built");
  return (
    <RecordFrame club={club} car={car} title="Add an as-built value" section="as-built">
      <div className="max-w-3xl">
        <SearchBox
          action={path}
          label="Which characteristic?"
          hint="Words of its name: front bar, disc, body colour."
          query={query}
        />
        {query === "" ? null : (
          <ul className="pt-6" aria-label="Characteristics found">
            {found.map(({ key, label, help }) => (
              <li key={key} className="border-hair border-b py-2">
                <a
                  href={editPartPath(club.slug, car.reference, "as-built", { characteristic: key })}
                  className="font-semibold"
                >
                  {label}
                </a>
                <p className="text-small text-soft">{help}</p>
              </li>
            ))}
          </ul>
        )}
        {query !== "" && found.length === 0 ? (
          <p className="pt-6">No characteristic has all of these words. Try fewer.</p>
        ) : null}
      </div>
    </RecordFrame>
  );
}

export interface AsBuiltFormProps extends PartProps {
  readonly characteristic: CharacteristicChoice;
}

const sideLabels = { whole: "Value", left: "Left", right: "Right" } as const;

/** The form over what one characteristic was when the car left the works; side by side where it has sides. */
export function AsBuiltForm({ club, car, characteristic }: AsBuiltFormProps) {
  const { key, label, help, sided, choices } = characteristic;
  const rows = car.asBuilt.filter((row) => row.characteristic === key);
  const said = (side: "whole" | "left" | "right") => rows.find((row) => row.side === side)?.entered ?? "";
  const sides = sided ? (["left", "right"] as const) : (["whole"] as const);
  const [first] = rows;
  const opened = {
    ...Object.fromEntries(sides.map((side) => [side, said(side)])),
    ...(first === undefined ? {} : { source: first.source, locus: first.locus, trust: first.trust }),
  };
  const listId = "choices";
  return (
    <RecordFrame club={club} car={car} title={`${label}, as built`} section="as-built">
      <RecordForm
        club={club}
        car={car}
        action={setAsBuilt.bind(null, club.slug, car.reference, key)}
        submit="Save"
        section="as-built"
        opened={opened}
        labels={sideLabels}
      >
        <p className="max-w-prose text-soft">{help}</p>
        {choices.length === 0 ? null : (
          <datalist id={listId}>
            {choices.map((choice) => (
              <option key={choice} value={choice} />
            ))}
          </datalist>
        )}
        <div className="grid gap-4 sm:grid-cols-2">
          {sides.map((side) => (
            <TextField
              key={side}
              name={side}
              label={sideLabels[side]}
              value={said(side)}
              hint={
                choices.length === 0
                  ? "As the trade writes it; empty when it is not known after all."
                  : `One of: ${choices.join("; ")}.`
              }
              {...(choices.length === 0 ? {} : { list: listId })}
            />
          ))}
        </div>
        <ProvenanceFields sources={car.sources} {...(first === undefined ? {} : { known: first })} />
      </RecordForm>
    </RecordFrame>
  );
}
