import type { Conflict } from "../../lib/form-state";

/** What both people changed, side by side; saving again goes over the other's change knowingly. */
export function ConflictNotice({ conflict }: { readonly conflict: Conflict }) {
  if (conflict.differences.length === 0) return null;
  return (
    <div className="overflow-x-auto pt-3">
      <table className="text-small">
        <caption className="pb-1 text-left font-semibold">What stands now, and what you want</caption>
        <thead>
          <tr className="border-ink border-b text-left">
            <th className="py-1 pr-6">Field</th>
            <th className="py-1 pr-6">When you opened it</th>
            <th className="py-1 pr-6">Saved since</th>
            <th className="py-1">Yours</th>
          </tr>
        </thead>
        <tbody>
          {conflict.differences.map(({ field, label, was, theirs, yours }) => (
            <tr key={field} className="border-hair border-b align-top">
              <th scope="row" className="py-1 pr-6 text-left font-normal">
                {label}
              </th>
              <td className="py-1 pr-6">{was || "–"}</td>
              <td className="py-1 pr-6 font-semibold">{theirs || "–"}</td>
              <td className="py-1">{yours || "–"}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
