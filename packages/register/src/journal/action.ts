/** What was done, as the journal's actions name it, in words. */
const actions: Readonly<Record<string, string>> = {
  "car.add": "Car added",
  "car.change": "Car changed by a file",
  "car.correct": "Facts of the car corrected",
  "car.file": "Car filed under another number or series",
  "car.merge": "Two records found to be of one car",
  "option.set": "Options set",
  "identity.add": "Number or mark added",
  "identity.correct": "Number or mark corrected",
  "identity.remove": "Number or mark taken away",
  "status.add": "Status added",
  "status.correct": "Status corrected",
  "status.remove": "Status taken away",
  "asBuilt.add": "As-built value added",
  "asBuilt.correct": "As-built value corrected",
  "asBuilt.remove": "As-built value taken away",
  "note.add": "History added",
  "note.correct": "History corrected",
  "note.remove": "History taken away",
  "keeper.add": "Keeper added",
  "keeper.correct": "Keeper corrected",
  "keeper.erase": "Keeper's personal data erased",
  "number.decide": "Decision about a number",
  "evidence.add": "Evidence added",
  "evidence.link": "Evidence linked",
  "evidence.withdraw": "Evidence withdrawn",
  "specification.add": "Specification added",
  "event.add": "Event added",
  "entry.add": "Car entered in an event",
  "marque.add": "Marque added",
  "series.add": "Series added",
  "ruleSet.add": "Rule set added",
  "invitation.add": "Somebody invited",
  "membership.add": "Somebody joined",
};

/** camelCase as words: `firstRegistered` → "first registered". */
export const spaced = (name: string): string =>
  name
    .replace(/([a-z0-9])([A-Z])/g, "$1 $2")
    .replace(/[._-]+/g, " ")
    .toLowerCase();

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/**
 * An action of the journal in words; one that has no wording of its own by its parts, so that nothing goes untold.
 *
 * @example sayAction("car.add") // => "Car added"
 * @example sayAction("datedItem.replace") // => "Dated item: replace"
 */
export function sayAction(action: string): string {
  const known = actions[action];
  if (known !== undefined) return known;
  const [noun = "", ...rest] = action.split(".");
  return capital(rest.length === 0 ? spaced(noun) : `${spaced(noun)}: ${spaced(rest.join(" "))}`);
}
