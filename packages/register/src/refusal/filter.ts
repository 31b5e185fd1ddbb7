import { list, type Words } from "./words";

/** What the service refuses about filter records, apart from the general refusals. */
export interface FilterRefusals {
  FILTER_NOT_FOUND: { readonly filter: string; readonly known: readonly string[] };
  FILTER_NAME_TAKEN: { readonly name: string };
  FILTER_OF_ANOTHER: { readonly name: string };
  TOO_MANY_FILTERS: { readonly limit: number };
}

export const filterWords: Words<FilterRefusals> = {
  FILTER_NOT_FOUND: ({ filter, known }) => ({
    what: `There is no filter "${filter}" of yours or of the club's.`,
    remedy: `Filters: ${list(known)}.`,
  }),
  FILTER_NAME_TAKEN: ({ name }) => ({
    what: `There is a filter "${name}" already.`,
    remedy: "Give another name, or tick that yours is to be replaced.",
  }),
  FILTER_OF_ANOTHER: ({ name }) => ({
    what: `"${name}" was shared by another member.`,
    remedy: "Save it under a name of your own, or ask the registrar.",
  }),
  TOO_MANY_FILTERS: ({ limit }) => ({
    what: `You keep ${limit} filters, which is the most.`,
    remedy: "Take one away that you no longer need.",
  }),
};
