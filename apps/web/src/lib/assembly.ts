import type { AssemblyCounts } from "@trunnion/api";
import { assemblies, assemblyLabels } from "@trunnion/register";
import type { AssemblyCount } from "../components/assembly-strip";

/** Assemblies in walking order, as leaders number them, with how many characteristics differ in each. */
export function leadersOf(
  counts: AssemblyCounts,
): readonly (AssemblyCount & { readonly assembly: string })[] {
  return assemblies.map((assembly, index) => ({
    leader: index + 1,
    assembly,
    label: assemblyLabels[assembly],
    deviations: counts[assembly] ?? 0,
  }));
}

/** Words for the two sides, in the club's way. */
export const sideWords = {
  leftRight: { left: "Left", right: "Right" },
  nearOff: { left: "Nearside", right: "Offside" },
} as const;
