import type { Known } from "@trunnion/register";
import type { ReactNode } from "react";
import { Provenance } from "./provenance";

export interface Definition {
  readonly label: string;
  readonly value: ReactNode;
  readonly known?: Known;
}

/** Terms and what is known of each, on hairlines. What is not known is said, not left out. */
export function DefinitionTable({ rows }: { readonly rows: readonly Definition[] }) {
  return (
    <dl className="border-hair border-t">
      {rows.map(({ label, value, known }) => (
        <div
          // A car may have several marks and keepers, and so several lines of one label.
          key={`${label} ${typeof value === "string" ? value : ""}`}
          className="grid grid-cols-[8.5rem_1fr] gap-x-4 border-hair border-b py-1.5"
        >
          <dt className="font-normal text-small text-soft">{label}</dt>
          <dd>
            {value === "" ? <span className="text-soft">not recorded</span> : value}
            {known === undefined ? null : <Provenance known={known} />}
          </dd>
        </div>
      ))}
    </dl>
  );
}
