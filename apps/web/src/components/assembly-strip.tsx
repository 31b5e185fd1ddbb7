/** How many characteristics of an assembly differ. */
export interface AssemblyCount {
  readonly leader: number;
  readonly label: string;
  readonly deviations: number;
}

const pitch = 11;
const height = 22;

/** "Differs at front suspension (2), brakes (1)", or that nothing is known to differ. */
export function stripText(assemblies: readonly AssemblyCount[]): string {
  const differing = assemblies.filter(({ deviations }) => deviations > 0);
  if (differing.length === 0) return "Nothing known to differ";
  const first = differing.map(
    ({ label, deviations }) => `${label.charAt(0).toLowerCase()}${label.slice(1)} (${deviations})`,
  );
  return `Differs at ${first.join(", ")}`;
}

/**
 * A car's deviations at a glance, in lists: one place per assembly in walking order, as on the plan; a stroke rises
 * with the number that differ, up to five.
 */
export function AssemblyStrip({ assemblies }: { readonly assemblies: readonly AssemblyCount[] }) {
  const width = assemblies.length * pitch;
  const strokes = (differing: boolean) =>
    assemblies
      .map(({ deviations }, index) => ({ deviations, x: index * pitch + pitch / 2 }))
      .filter(({ deviations }) => deviations > 0 === differing)
      .map(({ deviations, x }) => `M${x} ${height - 3.5}v-${riseOf(deviations)}`)
      .join("");
  const differs = strokes(true);
  // Two paths, not one a place: a page of a list has fifty strips.
  return (
    <svg
      className="shrink-0"
      role="img"
      aria-label={stripText(assemblies)}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
    >
      <title>{stripText(assemblies)}</title>
      <path d={`M0 ${height - 4}.5H${width}${strokes(false)}`} className="stroke-line" strokeWidth="1" />
      {differs === "" ? null : <path d={differs} className="stroke-red" strokeWidth="4" />}
    </svg>
  );
}

const riseOf = (deviations: number) => (deviations === 0 ? 3 : 4 + 2.6 * Math.min(deviations, 5));

export interface DifferingProps {
  /** Characteristics of the car that differ from specification. */
  readonly deviating: number;
  /** Where; left out, only the number is shown. */
  readonly assemblies?: readonly AssemblyCount[];
  /** Characteristics that could be compared; with none known, that is said instead of a nought. */
  readonly compared?: number;
}

/** How many of a car's characteristics differ, and where. */
export function Differing({ deviating, assemblies, compared }: DifferingProps) {
  if (compared === 0) return <span className="text-soft">nothing to compare</span>;
  return (
    <span className="inline-flex items-center gap-3">
      {assemblies === undefined ? null : <AssemblyStrip assemblies={assemblies} />}
      <span
        className={`min-w-[2ch] text-right leading-none ${deviating === 0 ? "text-soft" : "font-semibold"}`}
      >
        {deviating}
        {compared === undefined ? (
          <span className="font-normal wide:sr-only"> {deviating === 1 ? "deviation" : "deviations"}</span>
        ) : (
          <span className="font-normal text-small text-soft"> of {compared}</span>
        )}
      </span>
    </span>
  );
}
