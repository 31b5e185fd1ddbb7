import { entryListLimits, Problems } from "@trunnion/register";
import { z } from "zod";
import type { Context } from "../context";
import { lineInput } from "../entry-input";
import { type AddEntryInput, addEntries } from "../event";
import { type EntryRemark, type ListedCar, type ListedEntry, readEntryList } from "./read";

export const takeEntryListInput = z.object({
  /** The event's short name. */
  event: lineInput(60).min(1),
  text: z.string().max(entryListLimits.characters),
  /** Line → the car it means by its id, `none` for a car that is not on the register, `leave` to leave it out. */
  choices: z
    .record(z.string().regex(/^\d{1,6}$/), z.union([z.uuid(), z.enum(["", "none", "leave"])]))
    .default({}),
});
export type TakeEntryListInput = z.infer<typeof takeEntryListInput>;

/** What a line comes to once it was asked about. */
type Settled =
  | { readonly as: "leave" }
  | { readonly as: "open"; readonly problem: string }
  | { readonly as: "none" }
  | { readonly as: "car"; readonly car: ListedCar };

const open = { as: "open", problem: "say which car it is, or that it is none of them" } as const;

function settled({ match, line }: ListedEntry, choices: TakeEntryListInput["choices"]): Settled {
  const chosen = choices[String(line)] ?? "";
  if (chosen === "leave" || chosen === "none") return { as: chosen };
  if (match.state === "none") return { as: "none" };
  if (match.state === "matched") return { as: "car", car: match.car };
  const car = match.candidates.find((one) => one.car === chosen);
  return car ? { as: "car", car } : open;
}

/** Remarks that no choice settles but leaving the line out. */
const standsInTheWay: ReadonlySet<EntryRemark["kind"]> = new Set(["unfit", "numberMissing", "numberTaken"]);

/** What stands in a line's way, given the lines before it that go in. */
function problemsOf(entry: ListedEntry, is: Settled, before: readonly Placed[]): readonly string[] {
  const problems = entry.remarks.filter(({ kind }) => standsInTheWay.has(kind));
  const texts = problems.map(({ text }) => text);
  const sameNumber = before.find((one) => one.number !== "" && one.number === entry.number);
  if (sameNumber) texts.push(`Running number ${entry.number} stands on line ${sameNumber.line} too.`);
  if (is.as === "open") texts.push(is.problem);
  if (is.as !== "car") return texts;
  const { chassis, enteredAs } = is.car;
  if (enteredAs !== undefined) texts.push(`${chassis} is entered already, as number ${enteredAs}.`);
  const sameCar = before.find(({ car }) => car === is.car.car);
  if (sameCar) texts.push(`${chassis} stands on line ${sameCar.line} too: the same car twice.`);
  return texts;
}

interface Placed {
  readonly line: number;
  readonly number: string;
  readonly car?: string;
}

function describedAs({ car, mark }: ListedEntry): string {
  return [car, mark].filter((text) => text !== "").join(", ");
}

/**
 * Enters the cars of a pasted list: all of it or, where a line is not settled, none. Tells how many.
 *
 * @throws Invalid at `choices.<line>` for a line that may mean several cars and was not settled, that has no running
 * number or one that is taken, and for a car named twice; Refusal those of `readEntryList`
 */
export async function takeEntryList(ctx: Context, input: TakeEntryListInput): Promise<number> {
  const { event, entries } = await readEntryList(ctx, input);
  const problems = new Problems();
  const placed: Placed[] = [];
  const taken: AddEntryInput[] = [];
  for (const entry of entries) {
    const is = settled(entry, input.choices);
    if (is.as === "leave") continue;
    for (const problem of problemsOf(entry, is, placed)) problems.add(`choices.${entry.line}`, problem);
    const { line, number, driver, group, classId } = entry;
    placed.push({ line, number, ...(is.as === "car" ? { car: is.car.car } : {}) });
    taken.push({
      runningNumber: number,
      ...(is.as === "car" ? { carId: is.car.car } : { describedAs: describedAs(entry) }),
      ...(driver === "" ? {} : { driver }),
      ...(group === "" ? {} : { group }),
      ...(classId === undefined ? {} : { eventClassId: classId }),
    });
  }
  problems.throwIfAny();
  await addEntries(ctx, event.id, taken);
  return taken.length;
}
