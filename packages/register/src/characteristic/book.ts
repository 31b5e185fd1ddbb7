import type { Characteristic } from "./characteristic";
import { builtInCharacteristics } from "./dictionary/index";
import { foldName } from "./fold-name";

/** All characteristics one club works with: the built-in ones and its own, which behave alike everywhere. */
export interface CharacteristicBook {
  /** Built-in ones first, in walking order, then the club's own in the order given. */
  readonly all: readonly Characteristic[];
  /** By key; `undefined` for a key that is not in the book. */
  find(key: string): Characteristic | undefined;
  /** By key, label or another name, however it is capitalised, accented or hyphenated; for import headings. */
  named(name: string): Characteristic | undefined;
}

/** Two characteristics that claim one key or one name. */
export interface CharacteristicClash {
  readonly kind: "key" | "name";
  /** The key or name both claim. */
  readonly claimed: string;
  /** Key of the one that has it already, and of the one that would take it. */
  readonly holder: string;
  readonly claimant: string;
}

const namesOf = ({ key, label, also = [] }: Characteristic) => [key, label, ...also];

interface Index {
  readonly byKey: Map<string, Characteristic>;
  readonly byName: Map<string, Characteristic>;
  readonly clashes: CharacteristicClash[];
}

function add({ byKey, byName, clashes }: Index, characteristic: Characteristic): void {
  const { key } = characteristic;
  if (byKey.has(key)) clashes.push({ kind: "key", claimed: key, holder: key, claimant: key });
  else byKey.set(key, characteristic);
  for (const name of namesOf(characteristic)) {
    const folded = foldName(name);
    const holder = byName.get(folded);
    if (holder === undefined) byName.set(folded, characteristic);
    else if (holder.key !== key) {
      clashes.push({ kind: "name", claimed: name, holder: holder.key, claimant: key });
    }
  }
}

function indexOf(all: readonly Characteristic[]): Index {
  const index: Index = { byKey: new Map(), byName: new Map(), clashes: [] };
  for (const characteristic of all) add(index, characteristic);
  return index;
}

/** What keeps a club's own characteristics from standing beside the built-in ones and each other; empty when nothing does. */
export function characteristicClashes(own: readonly Characteristic[]): readonly CharacteristicClash[] {
  return indexOf([...builtInCharacteristics, ...own]).clashes;
}

function sayClash({ kind, claimed, holder, claimant }: CharacteristicClash): string {
  if (kind === "key") return `the key "${claimed}" is taken; give the new characteristic another`;
  return `the name "${claimed}" of ${claimant} is taken by ${holder}; give the new characteristic another`;
}

/**
 * The book of a club: its own characteristics beside the built-in ones.
 * @throws RangeError when two claim one key or name; see {@link characteristicClashes}, which forms ask first
 */
export function characteristicBook(own: readonly Characteristic[] = []): CharacteristicBook {
  return own.length === 0 ? builtInBook : bookWith(own);
}

function bookWith(own: readonly Characteristic[]): CharacteristicBook {
  const all = [...builtInCharacteristics, ...own];
  const { byKey, byName, clashes } = indexOf(all);
  const [clash] = clashes;
  if (clash !== undefined) throw new RangeError(sayClash(clash));
  return { all, find: (key) => byKey.get(key), named: (name) => byName.get(foldName(name)) };
}

/** The book of a club without characteristics of its own. */
export const builtInBook: CharacteristicBook = bookWith([]);

/** A built-in characteristic by its key. */
export function findCharacteristic(key: string): Characteristic | undefined {
  return builtInBook.find(key);
}
