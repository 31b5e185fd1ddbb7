import { assemblies, assemblyLabels, type Characteristic, characteristicBook } from "@trunnion/register";
import { Button } from "../../components/button";
import { PageHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { fleetPath } from "../../lib/path";
import { questionsFor } from "./question";

export interface FleetPageProps {
  readonly club: ClubFace;
  /** The club's own characteristics, beside the built-in ones. */
  readonly own: readonly Characteristic[];
}

/** Questions across every car. */
export function FleetPage({ club, own }: FleetPageProps) {
  const { all } = characteristicBook(own);
  return (
    <>
      <PageHead title="Fleet" lead="Questions across every car" />
      <form
        action={`${fleetPath(club.slug)}/characteristic`}
        method="get"
        className="print:hidden flex flex-wrap items-end gap-x-4 gap-y-3 pb-8"
      >
        <div className="grid min-w-0 gap-1">
          <label htmlFor="key" className="font-semibold text-small">
            One characteristic across the cars
          </label>
          <select id="key" name="key" className="field max-w-full">
            {assemblies.map((assembly) => (
              <optgroup key={assembly} label={assemblyLabels[assembly]}>
                {all
                  .filter((one) => one.assembly === assembly)
                  .map(({ key, label }) => (
                    <option key={key} value={key}>
                      {label}
                    </option>
                  ))}
              </optgroup>
            ))}
          </select>
        </div>
        <Button>Show its spread</Button>
      </form>
      <ul className="max-w-3xl border-ink border-t-2">
        {questionsFor(club.slug).map(({ href, title, text }) => (
          <li key={href} className="border-hair border-b py-3">
            <h2 className="text-lead">
              <a href={href}>{title}</a>
            </h2>
            <p className="max-w-prose text-soft">{text}</p>
          </li>
        ))}
      </ul>
    </>
  );
}
