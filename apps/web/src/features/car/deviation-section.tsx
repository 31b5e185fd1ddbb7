import { SectionHead } from "../../components/page-head";
import type { ClubFace } from "../../components/shell/shell";
import { type Baseline, type ValueRow, ValueTable } from "../../components/value-table";
import { carPath } from "../../lib/path";

export interface DeviationsProps {
  readonly club: ClubFace;
  readonly car: { readonly reference: string };
  readonly baseline: Baseline;
  readonly deviations: readonly ValueRow[];
  readonly notRecorded: number;
}

const titles: Readonly<Record<Baseline, string>> = {
  factory: "What differs from specification",
  asBuilt: "What differs from as built",
};

/** What is different about this car, worst first, against either baseline. */
export function Deviations({ club, car, baseline, deviations, notRecorded }: DeviationsProps) {
  return (
    <section aria-labelledby="deviations">
      <SectionHead id="deviations" title={titles[baseline]}>
        <BaselineSwitch club={club} car={car} baseline={baseline} />
      </SectionHead>
      {deviations.length === 0 ? (
        <p>Nothing that is recorded differs.</p>
      ) : (
        <ValueTable caption={`${titles[baseline]}, worst first`} rows={deviations} baseline={baseline} />
      )}
      {notRecorded === 0 ? null : (
        <p className="pt-3 text-small text-soft">
          {notRecorded === 1 ? "1 characteristic is" : `${notRecorded} characteristics are`} not recorded:
          whether they differ is not known.
        </p>
      )}
    </section>
  );
}

function BaselineSwitch({ club, car, baseline }: Pick<DeviationsProps, "club" | "car" | "baseline">) {
  const views = [
    { key: "factory", label: "specification", href: `${carPath(club.slug, car.reference)}#deviations` },
    {
      key: "asBuilt",
      label: "as built",
      href: `${carPath(club.slug, car.reference, { against: "asBuilt" })}#deviations`,
    },
  ];
  return (
    <nav aria-label="Compare with" className="print:hidden flex gap-5 text-small">
      <span aria-hidden className="place text-soft">
        Compare with
      </span>
      {views.map(({ key, label, href }) => (
        <a
          key={key}
          href={href}
          {...(key === baseline ? { "aria-current": "true" as const } : {})}
          className="place"
        >
          {label}
        </a>
      ))}
    </nav>
  );
}
