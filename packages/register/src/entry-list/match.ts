import { foldText } from "../condition/fold-text";
import { type Likeness, likeness } from "../identity/near-miss";
import { chassisKey } from "../identity/number";
import type { EntryListLine } from "./read";

/** A car of the register, as far as a list of entries can name it. */
export interface KnownCar {
  readonly id: string;
  readonly chassis: string;
  /** Registration marks it bears or bore. */
  readonly marks: readonly string[];
  /** Names of those who keep it now; none where they may not be read. */
  readonly keepers: readonly string[];
}

/** A car a line may mean, and why. */
export interface Candidate {
  readonly car: string;
  readonly because: string;
}

/** What a line of a list means: one car for certain, perhaps one of several, or none on the register. */
export type EntryMatch =
  | { readonly state: "matched"; readonly car: string; readonly because: string }
  | { readonly state: "doubtful"; readonly candidates: readonly Candidate[] }
  | { readonly state: "none" };

const likenessWords: Readonly<Record<Exclude<Likeness, "same">, string>> = {
  lookalike: "letters for digits",
  transposed: "two characters the other way round",
  oneCharacter: "one character differs",
};

/** Most cars a doubtful line offers. */
const CANDIDATE_LIMIT = 8;

function alike(asked: string, number: string): string | undefined {
  const how = likeness(asked, number);
  return how === undefined || how === "same" ? undefined : likenessWords[how];
}

function byNumber(asked: string, cars: readonly KnownCar[]): readonly Candidate[] {
  const key = chassisKey(asked);
  if (key === "") return [];
  return cars.flatMap(({ id, chassis, marks }): readonly Candidate[] => {
    if (chassisKey(chassis) === key) return [{ car: id, because: `chassis number ${chassis}` }];
    const mark = marks.find((one) => chassisKey(one) === key);
    return mark === undefined ? [] : [{ car: id, because: `registration mark ${mark}` }];
  });
}

function nearly(asked: string, cars: readonly KnownCar[]): readonly Candidate[] {
  // Shorter ones are like too many others.
  if (chassisKey(asked).length < 4) return [];
  return cars.flatMap(({ id, chassis, marks }): readonly Candidate[] => {
    const near = [
      { text: `chassis number ${chassis}`, how: alike(asked, chassis) },
      ...marks.map((mark) => ({ text: `registration mark ${mark}`, how: alike(asked, mark) })),
    ].find(({ how }) => how !== undefined);
    return near === undefined ? [] : [{ car: id, because: `${near.text}: ${near.how}` }];
  });
}

function byName(driver: string, cars: readonly KnownCar[]): readonly Candidate[] {
  const name = foldText(driver.trim());
  if (name === "") return [];
  return cars
    .filter(({ keepers }) => keepers.some((keeper) => foldText(keeper) === name))
    .map(({ id }) => ({ car: id, because: `kept by ${driver}` }));
}

/**
 * What car of the register a line means. A number or mark that is one car's, to the letter, is that car; where several
 * claim it, where it is only like one, and where nothing but the driver's name says so, it is asked.
 */
export function matchEntry(
  line: Pick<EntryListLine, "car" | "mark" | "driver">,
  cars: readonly KnownCar[],
): EntryMatch {
  const asked = [line.car, line.mark].filter((text) => text !== "");
  const exact = asked.map((text) => byNumber(text, cars)).find((found) => found.length > 0) ?? [];
  const [only, ...others] = exact;
  if (only && others.length === 0) return { state: "matched", ...only };
  if (only) return { state: "doubtful", candidates: exact.slice(0, CANDIDATE_LIMIT) };
  const near = asked.flatMap((text) => nearly(text, cars));
  const named = byName(line.driver, cars).filter(({ car }) => near.every((one) => one.car !== car));
  const candidates = [...near, ...named].slice(0, CANDIDATE_LIMIT);
  return candidates.length === 0 ? { state: "none" } : { state: "doubtful", candidates };
}
