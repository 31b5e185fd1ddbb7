import type { Condition } from "@trunnion/register";
import type { Context } from "../context";
import { conditionAsked } from "../filter";
import { searchedIn } from "../search-index";
import type { CarChoice } from "./policy";

/** Which cars somebody asks for: everything given must hold. */
export interface ChoiceInput {
  /**
   * Words, each of which stands somewhere on the car's record: part of any number or mark, colour, parts, modifications,
   * remarks, history, captions, its series; for those who may see keepers also their names. Capitals and accents aside. A
   * word that nobody has to the letter is taken for those it is like; words in quotation marks stand together.
   */
  readonly search?: string;
  /** A series' short name. */
  readonly series?: string;
  readonly condition?: Condition;
  /** Name of a saved filter, own or shared; with a condition beside it both must hold. */
  readonly filter?: string;
}

/**
 * Settles which cars somebody asks for. A search of blanks alone is none.
 *
 * @throws Refusal FILTER_NOT_FOUND
 */
export async function choiceAsked(ctx: Context, input: ChoiceInput): Promise<CarChoice> {
  const condition = await conditionAsked(ctx, input);
  const text = input.search?.trim() ?? "";
  return {
    ...(text === "" ? {} : { search: await searchedIn(ctx, text) }),
    ...(input.series === undefined ? {} : { series: input.series }),
    ...(condition === undefined ? {} : { condition }),
  };
}
