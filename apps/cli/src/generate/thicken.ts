import {
  type AcceptedModification,
  type AsBuiltValue,
  type CarEntries,
  type CharacteristicBook,
  noSourceTitle,
  parsePartialDate,
  parseValue,
  type Reading,
  type Side,
  type Trust,
  type Value,
} from "@trunnion/register";
import { type Draw, written } from "./draw";
import { type Drawn, type Habit, habits, measured, stories, worksCard } from "./habit";

/** What is drawn for one car beside what the car it follows has. */
export interface Thick {
  readonly asBuilt: readonly AsBuiltValue[];
  readonly modifications: readonly DrawnModification[];
  readonly sheets: readonly DrawnSheet[];
  readonly stories: readonly { readonly text: string; readonly date: Dated }[];
}

/** A day as written, and the days it allows. */
export interface Dated {
  readonly text: string;
  readonly earliest: string;
  readonly latest: string;
}
export interface DrawnModification extends AcceptedModification {
  readonly fitted: Dated;
  readonly reason: string;
  readonly donor: string;
  readonly fastener: Habit["fastener"];
}
export interface DrawnSheet {
  readonly id: string;
  readonly on: string;
  readonly sequence: number;
  readonly trust: Trust;
  readonly readings: readonly Reading[];
}

/** A car to be thickened. */
export interface Thin {
  readonly entries: CarEntries;
  /** Characteristics that its works' card has already. */
  readonly known: ReadonlySet<string>;
  readonly builtYear: number;
  readonly nextModification: number;
  readonly nextSheet: number;
}

/** Last year that anything invented happens in: the past, whenever this runs. */
const LAST_YEAR = 2025;
/** Characteristics of a works' card, of a hundred that the specification or the list above has. */
const CARD_PERCENT = 36;
const READ_PERCENT = 60;

const two = (number: number) => String(number).padStart(2, "0");
const monthNames = [
  "Jan",
  "Feb",
  "March",
  "April",
  "May",
  "June",
  "July",
  "Aug",
  "Sept",
  "Oct",
  "Nov",
  "Dec",
];

/** Draws what a car's records say. The same source of numbers and the same car give the same. */
export class Thickener {
  #rows = 0;

  constructor(
    private readonly draw: Draw,
    private readonly book: CharacteristicBook,
    private readonly idOf: (row: string) => string,
  ) {}

  thicken(car: Thin): Thick {
    // Some owners leave a car alone and some never do: the parts that go with one another come from that.
    const keenness = 0.12 + 0.53 * (this.draw.next() + this.draw.next());
    return {
      asBuilt: this.#card(car),
      modifications: this.#modifications(car, keenness),
      sheets: this.#sheets(car, keenness),
      stories: this.#stories(car),
    };
  }

  #id(): string {
    this.#rows += 1;
    return this.idOf(`thick-${this.#rows}`);
  }

  #sides(key: string): readonly Side[] {
    return this.book.find(key)?.sided ? ["left", "right"] : ["whole"];
  }

  #value(key: string, drawn: Drawn): Value {
    const characteristic = this.book.find(key);
    const text = written(this.draw, drawn);
    const parsed = characteristic && parseValue(characteristic, text);
    if (!parsed?.ok) throw new Error(`"${text}" cannot be written of ${key}`);
    return parsed.value;
  }

  #date(year: number): Dated {
    const [month, day] = [this.draw.whole(1, 12), this.draw.whole(1, 28)];
    const text = this.draw.pick([
      String(year),
      `${monthNames[month - 1]} ${year}`,
      `${year}-${two(month)}-${two(day)}`,
      `${year}-${two(month)}-${two(day)}`,
    ]);
    const parsed = parsePartialDate(text, { today: `${LAST_YEAR}-12-31` });
    if (!parsed.ok) throw new Error(parsed.problem.message);
    return parsed.date;
  }

  #card({ entries, known }: Thin): AsBuiltValue[] {
    const source = { title: noSourceTitle, trust: this.draw.pick(["documented", "inferred"] as const) };
    const listed = Object.entries(worksCard).map(([key, drawn]) => ({
      key,
      value: () => this.#value(key, drawn),
    }));
    const specified = [...entries.values()].flatMap(({ characteristic: key, nominal }) =>
      nominal === undefined || this.book.find(key)?.setting ? [] : [{ key, value: () => nominal }],
    );
    const seen = new Set(known);
    return [...specified, ...listed].flatMap(({ key, value }) => {
      if (seen.has(key) || !this.draw.chance(CARD_PERCENT)) return [];
      seen.add(key);
      return this.#sides(key).map((side) => ({
        id: this.#id(),
        characteristic: key,
        side,
        value: value(),
        source,
      }));
    });
  }

  #modifications({ builtYear, nextModification }: Thin, keenness: number): DrawnModification[] {
    const done = habits.flatMap((habit) => {
      const from = Math.max(habit.since, builtYear + 2);
      const times = this.draw.chance(habit.percent * keenness) ? (this.draw.chance(8) ? 2 : 1) : 0;
      return Array.from({ length: times }, () => ({
        habit,
        fitted: this.#date(this.draw.whole(from, LAST_YEAR)),
      }));
    });
    const inOrder = done.sort((one, other) => (one.fitted.latest < other.fitted.latest ? -1 : 1));
    return inOrder.map(({ habit, fitted }, place) =>
      this.#modification(habit, fitted, nextModification + place),
    );
  }

  #modification(habit: Habit, fitted: Dated, sequence: number): DrawnModification {
    const changes = Object.entries(habit.changes)
      .filter((_, place) => place === 0 || this.draw.chance(70))
      .flatMap(([key, drawn]) => {
        const after = this.#value(key, drawn);
        return this.#sides(key).map((side) => ({ characteristic: key, side, after }));
      });
    const known = fitted.earliest === fitted.latest ? {} : { earliest: fitted.earliest, said: fitted.text };
    return {
      id: this.#id(),
      on: fitted.latest,
      ...known,
      sequence,
      changes,
      fitted,
      reason: this.draw.pick(habit.reason),
      donor: this.draw.pick(habit.donor),
      fastener: this.draw.chance(60) ? habit.fastener : undefined,
      source: { title: noSourceTitle, trust: "stated" },
    };
  }

  #sheets({ nextSheet }: Thin, keenness: number): DrawnSheet[] {
    const count = Math.min(3, 1 + Math.floor(this.draw.next() * keenness * 2));
    const years = Array.from({ length: count }, () => this.draw.whole(2004, LAST_YEAR)).sort();
    return years.map((year, place) => {
      const on = `${year}-${two(this.draw.whole(1, 12))}-${two(this.draw.whole(1, 28))}`;
      const sheet = { id: this.#id(), on, sequence: nextSheet + place, trust: "stated" as const };
      return { ...sheet, readings: this.#readings(sheet) };
    });
  }

  #readings({ on, sequence }: Pick<DrawnSheet, "on" | "sequence">): Reading[] {
    const source = { title: noSourceTitle, trust: "stated" as const };
    return Object.entries(measured)
      .filter(() => this.draw.chance(READ_PERCENT))
      .flatMap(([characteristic, drawn]) =>
        this.#sides(characteristic).map((side) => {
          const value = this.#value(characteristic, drawn);
          return { id: this.#id(), on, sequence, characteristic, side, value, source };
        }),
      );
  }

  #stories({ builtYear }: Thin): Thick["stories"] {
    const count = this.draw.whole(0, 2);
    return Array.from({ length: count }, () => ({
      text: this.draw.pick(stories),
      date: this.#date(this.draw.whole(builtYear + 1, LAST_YEAR)),
    }));
  }
}

/** Year a car was built, where its record does not say: late enough for every series. */
export const builtYearOf = (built: { readonly latest: string } | undefined): number =>
  Number((built?.latest ?? "1977").slice(0, 4));
