import { assemblyLabels, type EntryChangeLine } from "@trunnion/register";

const kindWords = { added: "added", removed: "removed", changed: "changed" } as const;

export interface ChangeListProps {
  readonly changes: readonly EntryChangeLine[];
  readonly sideWords: { readonly left: string; readonly right: string };
}

const count = new Intl.NumberFormat("en-GB");

/** "3 added, 1 removed, 12 changed". */
export function sayChanges(changes: readonly Pick<EntryChangeLine, "kind">[]): string {
  const kinds = (["added", "removed", "changed"] as const).map((kind) => ({
    kind,
    of: changes.filter((change) => change.kind === kind).length,
  }));
  const parts = kinds
    .filter(({ of }) => of > 0)
    .map(({ kind, of }) => `${count.format(of)} ${kindWords[kind]}`);
  return parts.length === 0 ? "nothing differs" : parts.join(", ");
}

/** What differs between two specifications, entry by entry and part by part: what it was, what it is. */
export function ChangeList({ changes, sideWords }: ChangeListProps) {
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
