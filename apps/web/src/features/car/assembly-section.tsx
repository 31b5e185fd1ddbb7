import { LeaderNumber } from "../../components/plan";
import { type Baseline, type ValueRow, ValueTable } from "../../components/value-table";
import { assemblyAnchor } from "../../lib/path";

/** One assembly of a car: what is specified, what is there. */
export interface AssemblyState {
  readonly assembly: string;
  readonly label: string;
  readonly leader: number;
  readonly deviations: number;
  readonly rows: readonly ValueRow[];
  /** Labels of characteristics of which neither a value nor a specification is known. */
  readonly notRecorded: readonly string[];
}

/** Assemblies in walking order, each where its leader on the plan points to. */
export function AssemblySections({
  assemblies,
  baseline,
}: {
  readonly assemblies: readonly AssemblyState[];
  readonly baseline: Baseline;
}) {
  return assemblies.map((assembly) => (
    <AssemblySection key={assembly.assembly} assembly={assembly} baseline={baseline} />
  ));
}

function AssemblySection({
  assembly,
  baseline,
}: {
  readonly assembly: AssemblyState;
  readonly baseline: Baseline;
}) {
  const id = assemblyAnchor(assembly.assembly);
  const known = assembly.rows.filter(({ verdict }) => verdict !== "notRecorded");
  const unknown = assembly.rows.filter(({ verdict }) => verdict === "notRecorded");
  return (
    <section id={id} aria-labelledby={`${id}-title`}>
      <h3 id={`${id}-title`} className="flex items-center gap-3 border-line border-b pb-1 text-lead">
        <LeaderNumber leader={assembly.leader} differs={assembly.deviations > 0} />
        {assembly.label}
      </h3>
      {known.length === 0 ? null : <ValueTable caption={assembly.label} rows={known} baseline={baseline} />}
      {unknown.length === 0 ? null : (
        <details className="print:hidden border-hair border-b text-small">
          <summary className="min-h-11 py-2.5">
            {unknown.length} {baseline === "factory" ? "specified" : "known as built"}, not recorded of the
            car
          </summary>
          <ValueTable
            caption={`${assembly.label}: not recorded of the car`}
            rows={unknown}
            baseline={baseline}
          />
        </details>
      )}
      {assembly.notRecorded.length === 0 ? null : (
        <p className="pt-2 text-small text-soft">Not recorded: {assembly.notRecorded.join(", ")}.</p>
      )}
    </section>
  );
}
