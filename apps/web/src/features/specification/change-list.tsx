import { assemblyLabels, type EntryChangeLine } from "@trunnion/register";

const kindWords = { added: "added", removed: "removed", changed: "changed" } as const;

export interface ChangeListProps {
  readonly changes: readonly EntryChangeLine[];
  readonly sideWords: { readonly left: string; readonly right: string };
}

const count = new Intl.NumberFormat("en-GB");

type Counted = Pick<EntryChangeLine, "kind"> & Partial<Pick<EntryChangeLine, "fields">>;

/** The same is asked for, by another book: what a copy for the next series mostly differs in. */
const inSourceOnly = ({ kind, fields = [] }: Counted) =>
  kind === "changed" && fields.length > 0 && fields.every(({ label }) => label === "Source");

/** "3 added, 1 removed, 12 changed, 30 in their source only". */
export function sayChanges(changes: readonly Counted[]): string {
  const told = changes.filter((change) => !inSourceOnly(change));
  const kinds = (["added", "removed", "changed"] as const).map((kind) => ({
    words: kindWords[kind],
    of: told.filter((change) => change.kind === kind).length,
  }));
  const parts = [...kinds, { words: "in their source only", of: changes.length - told.length }]
    .filter(({ of }) => of > 0)
    .map(({ words, of }) => `${count.format(of)} ${words}`);
  return parts.length === 0 ? "nothing differs" : parts.join(", ");
}

/**
 * What differs between two specifications, entry by entry and part by part: what it was, what it is. Entries that differ
 * in nothing but their source stand apart, folded away.
 */
export function ChangeList({ changes, sideWords }: ChangeListProps) {
  const sources = changes.filter(inSourceOnly);
  const others = changes.filter((change) => !inSourceOnly(change));
  return (
    <>
      {others.length === 0 ? null : <ChangeTable changes={others} sideWords={sideWords} />}
      {sources.length === 0 ? null : (
        <details className="pt-6">
          <summary className="cursor-pointer">
            {sources.length === 1
              ? "1 entry differs in its source only"
              : `${count.format(sources.length)} entries differ in their source only`}
          </summary>
          <ChangeTable changes={sources} sideWords={sideWords} />
        </details>
      )}
    </>
  );
}

function ChangeTable({ changes, sideWords }: ChangeListProps) {
  return (
    <table className="entry-list">
      <caption className="sr-only">What differs, in walking order</caption>
      <thead>
        <tr>
          <th scope="col" className="entry-name">
            Characteristic
          </th>
          <th scope="col" className="entry-nominal">
            What happened
          </th>
          <th scope="col">What differs</th>
        </tr>
      </thead>
      <tbody>
        {changes.map((change, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a characteristic may occur twice, and the list never moves
          <Change key={index} change={change} sideWords={sideWords} />
        ))}
      </tbody>
    </table>
  );
}

function Change({
  change,
  sideWords,
}: { readonly change: EntryChangeLine } & Pick<ChangeListProps, "sideWords">) {
  const { label, side, cars, assembly, kind, fields } = change;
  return (
    <tr>
      <th scope="row" className="entry-name font-normal">
        {label}
        {side === undefined ? null : <span className="text-soft">, {sideWords[side].toLowerCase()}</span>}
        <span className="block text-fine text-soft">
          {assemblyLabels[assembly]}
          {cars === "" ? "" : `; ${cars}`}
        </span>
      </th>
      <td className="entry-nominal font-semibold">{kindWords[kind]}</td>
      <td className="entry-fields">
        <dl className="grid gap-y-1">
          {fields.map((field) => (
            <div key={field.label} className="flex flex-wrap gap-x-3">
              <dt className="font-normal text-soft">{field.label}</dt>
              <dd>
                {kind === "changed" ? (
                  <>
                    {field.before === "" ? (
                      <span className="text-soft">nothing</span>
                    ) : (
                      <del className="text-soft">{field.before}</del>
                    )}
                    <span aria-hidden> → </span>
                    <span className="sr-only">becomes </span>
                    {field.after === "" ? (
                      <span className="text-soft">nothing</span>
                    ) : (
                      <ins className="no-underline">{field.after}</ins>
                    )}
                  </>
                ) : (
                  field.before || field.after
                )}
              </dd>
            </div>
          ))}
        </dl>
      </td>
    </tr>
  );
}
