import type { DraftEntry } from "@trunnion/api";
import { alternativeRoles, alternativeRoleWords, type Characteristic } from "@trunnion/register";
import { ChoiceField, TextField } from "../../components/form/form-field";
import { trustOptions } from "./source-words";
import { ValueField } from "./value-field";

/** Empty rows to write further alternatives in. */
const SPARE = 2;

/** What the fields of alternatives are called in a list of what is wrong. */
export function alternativeLabels(alternatives: number): Readonly<Record<string, string>> {
  const rows = Array.from({ length: alternatives + SPARE }, (_, index) => index);
  const parts = { value: "value", note: "note", source: "source", locus: "page", trust: "trust" };
  return Object.fromEntries(
    rows.flatMap((row) =>
      Object.entries(parts).map(([part, name]) => [
        `alternatives.${row}.${part}`,
        `Alternative ${row + 1}, ${name}`,
      ]),
    ),
  );
}

export interface AlternativeFieldsProps {
  readonly page: DraftEntry;
  readonly characteristic: Characteristic;
}

const roleOptions = alternativeRoles.map((role) => ({ value: role, label: alternativeRoleWords[role] }));
const none = { role: "periodOption", value: "", note: "", source: "", locus: "", trust: "" } as const;

/** What is accepted in place of the nominal: those there are, and room for more. */
export function AlternativeFields({ page, characteristic }: AlternativeFieldsProps) {
  const { text, sources } = page;
  const rows = [...text.alternatives, ...Array.from({ length: SPARE }, () => none)];
  const sourceOptions = [
    { value: "", label: "that of the entry" },
    ...sources.map((title) => ({ value: title, label: title })),
  ];
  return (
    <fieldset className="grid">
      <legend className="pb-2 text-lead">What is accepted in its place</legend>
      <p className="pb-3 text-small text-soft">A row without a value is none: empty one to take it out.</p>
      {rows.map((row, index) => {
        const name = (part: string) => `alternatives.${index}.${part}`;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows are told apart by their place only
          <fieldset key={index} className="alternative-row">
            <legend className="sr-only">Alternative {index + 1}</legend>
            <ValueField
              name={name("value")}
              label={`Value ${index + 1}`}
              value={row.value}
              characteristic={characteristic}
              hint=""
            />
            <ChoiceField
              name={name("role")}
              label={`Accepted as ${index + 1}`}
              value={row.role}
              options={roleOptions}
            />
            <TextField name={name("note")} label={`Note ${index + 1}`} value={row.note} maxLength={2_000} />
            <details>
              <summary className="text-small">Its own source</summary>
              <div className="grid gap-3 pt-2">
                <ChoiceField
                  name={name("source")}
                  label={`Source ${index + 1}`}
                  value={row.source}
                  options={sourceOptions}
                />
                <TextField
                  name={name("locus")}
                  label={`Page ${index + 1}`}
                  value={row.locus}
                  maxLength={120}
                />
                <ChoiceField
                  name={name("trust")}
                  label={`Trust ${index + 1}`}
                  value={row.trust}
                  options={[{ value: "", label: "that of the entry" }, ...trustOptions]}
                />
              </div>
            </details>
          </fieldset>
        );
      })}
    </fieldset>
  );
}
