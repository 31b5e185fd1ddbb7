import { CalcRefusal } from "../catalogue/refusal";

/** Travel of the wheel centre that a linkage can reach without leaving its branch, metres from the design position. */
export interface Reach {
  /** Up; at most the limit searched. */
  readonly bump: number;
  /** Down, as a negative number; at least minus the limit searched. */
  readonly droop: number;
}

/** How far travel is searched, metres. */
export const searchedTravel = 0.5;
const stride = 0.01;
const halvings = 16;

/** Greatest travel in a direction that `reaches` says yes to, going outwards in strides of 10 mm, then halving. */
function furthest(direction: 1 | -1, reaches: (travel: number) => boolean): number {
  let inside = 0;
  let outside = 0;
  while (Math.abs(outside) < searchedTravel) {
    outside = inside + direction * stride;
    if (!reaches(outside)) break;
    inside = outside;
  }
  if (inside === outside) return inside;
  for (let count = 0; count < halvings; count += 1) {
    const middle = (inside + outside) / 2;
    if (reaches(middle)) inside = middle;
    else outside = middle;
  }
  return inside;
}

/** The reach both ways, or `null` if not even the design height is reached. */
export function searchReach(reaches: (travel: number) => boolean): Reach | null {
  if (!reaches(0)) return null;
  return { bump: furthest(1, reaches), droop: furthest(-1, reaches) };
}

const millimetres = (metres: number): string => `${(metres * 1000).toFixed(1)} mm`;

/** The refusal for a position out of reach: what was asked, and what would be reached. */
export function outOfReach(asked: { bump: number; rack: number }, reach: Reach | null): CalcRefusal {
  const where = asked.rack === 0 ? "" : ` with the rack at ${millimetres(asked.rack)}`;
  const what = `the linkage cannot reach ${millimetres(asked.bump)} of travel${where}`;
  if (reach === null) {
    return new CalcRefusal(
      "OUT_OF_REACH",
      `${what}: its parts do not meet there even at design height`,
      "rack",
    );
  }
  const range = `${millimetres(reach.droop)} to ${millimetres(reach.bump)}`;
  return new CalcRefusal("OUT_OF_REACH", `${what}: it reaches ${range} there`, "bump");
}
