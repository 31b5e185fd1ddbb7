import type { ScarcityRung } from "@trunnion/register";
import type { ClubFacts, Context } from "../context";
import { type DependentCar, dependentCars, findPart, type PartNeed, partNeeds } from "../part";

/** Rungs at which whoever needs the part has to look ahead. */
const hard: ReadonlySet<ScarcityRung> = new Set(["unobtainable", "scarce", "thinning"]);

/** A part that is hard to find, with how many cars depend on it and what can stand in. */
export interface ScarcePart extends Pick<PartNeed, "use" | "scarcity" | "standIns"> {
  readonly slug: string;
  readonly name: string;
  readonly place: string;
  /** Names of the series it fits. */
  readonly series: readonly string[];
}

/** Parts that are hard to find, the hardest and most needed first, and the cars that depend on one of them. */
export interface ScarceParts {
  readonly club: ClubFacts;
  readonly parts: readonly ScarcePart[];
  /** Parts on the club's list altogether, and of how many of them nobody has noted looking. */
  readonly listed: number;
  readonly notKnown: number;
  /** The part asked about, with its cars: those recorded with it first. */
  readonly chosen?: { readonly slug: string; readonly name: string; readonly cars: readonly DependentCar[] };
}

function scarcePart({ part, use, scarcity, standIns }: PartNeed): ScarcePart {
  const fits = part.fits.filter(({ standing }) => standing !== "doesNotFit");
  const series = [...new Set(fits.map(({ seriesName }) => seriesName))];
  return { slug: part.slug, name: part.name, place: part.place, series, use, scarcity, standIns };
}

/**
 * Which cars depend on a part that nobody can find, or hardly.
 *
 * @param slug a part whose cars are told by number
 * @throws Refusal PART_NOT_FOUND
 */
export async function scarceParts(ctx: Context, slug?: string): Promise<ScarceParts> {
  const needs = await partNeeds(ctx);
  const chosen = slug === undefined ? undefined : await findPart(ctx, slug);
  return {
    club: ctx.club,
    parts: needs.filter(({ scarcity }) => hard.has(scarcity.rung)).map(scarcePart),
    listed: needs.length,
    notKnown: needs.filter(({ scarcity }) => scarcity.rung === "notKnown").length,
    ...(chosen === undefined
      ? {}
      : { chosen: { slug: chosen.slug, name: chosen.name, cars: await dependentCars(ctx, chosen) } }),
  };
}
