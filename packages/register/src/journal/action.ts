/** What was done, as the journal's actions name it, in words. */
const actions: Readonly<Record<string, string>> = {
  "asBuilt.set": "As-built value recorded",
  "calendarFeed.add": "Private calendar link made",
  "calendarFeed.remove": "Private calendar link taken back",
  "car.add": "Car added",
  "car.change": "Car changed by a file",
  "car.correct": "Facts of the car corrected",
  "car.file": "Car filed under another number or series",
  "car.merge": "Two records found to be of one car",
  "car.remove": "Car taken off with the file that brought it",
  "characteristic.add": "Characteristic of the club's own added",
  "characteristic.change": "Characteristic of the club's own changed",
  "decision.add": "Decided at an event",
  "entry.add": "Car entered in an event",
  "entry.change": "Entry changed",
  "event.add": "Event added",
  "event.change": "Event changed",
  "evidence.add": "Evidence added",
  "evidence.correct": "Evidence described anew",
  "evidence.link": "Evidence linked to what it supports",
  "evidence.restore": "Evidence brought back",
  "evidence.turn": "Picture turned upright",
  "evidence.unlink": "Evidence taken off what it supported",
  "evidence.withdraw": "Evidence withdrawn",
  "extract.choose": "Public extract chosen",
  "finding.add": "Found at an event",
  "finding.record": "Readings of an event put on the car's record",
  "identity.add": "Number or mark added",
  "identity.correct": "Number or mark corrected",
  "identity.remove": "Number or mark taken away",
  "import.done": "File read in",
  "import.undone": "File taken back",
  "invitation.add": "Somebody invited",
  "keeper.add": "Keeper added",
  "keeper.correct": "Keeper's dates corrected",
  "keeper.erase": "Keeper's personal data erased",
  "keeper.ownContact": "Keeper corrected own contact data",
  "keeper.particulars": "Keeper's particulars corrected",
  "keeper.remove": "Keeper taken away",
  "marque.add": "Marque added",
  "membership.add": "Somebody joined",
  "note.add": "History added",
  "note.correct": "History corrected",
  "note.remove": "History taken away",
  "number.decide": "Decision about a number",
  "instrument.add": "Instrument put on the books",
  "instrument.change": "Instrument corrected",
  "instrument.restore": "Instrument put back in use",
  "instrument.retire": "Instrument taken out of use",
  "number.setAside": "Finding about a number set aside",
  "number.takeUp": "Finding about a number taken up again",
  "option.set": "Options set",
  "part.add": "Part put on the list",
  "part.change": "Part of the list changed",
  "part.withdraw": "Part taken off the list",
  "partNote.add": "Part noted as found, sought or tried",
  "partNote.withdraw": "Note about a part taken back",
  "ruleSet.add": "Rule set added",
  "ruleSet.change": "Draft of a rule set changed",
  "ruleSet.copy": "Rule set copied into a draft",
  "ruleSet.discard": "Draft of a rule set discarded",
  "ruleSet.makeCurrent": "Rule set made the current one",
  "series.add": "Series added",
  "series.change": "Series changed",
  "source.add": "Source added",
  "specification.add": "Specification added",
  "specification.addEntry": "Entry added to a draft",
  "specification.begin": "Draft of a specification begun",
  "specification.changeEntry": "Entry of a draft changed",
  "specification.discard": "Draft of a specification discarded",
  "specification.import": "Specification read in from a table",
  "specification.makeCurrent": "Specification made the current one",
  "specification.removeEntry": "Entry taken out of a draft",
  "status.add": "Status added",
  "status.correct": "Status corrected",
  "status.remove": "Status taken away",
  "submission.accept": "Submission accepted",
  "submission.answer": "Question about a submission answered",
  "submission.decline": "Submission declined",
  "submission.query": "Question asked about a submission",
  "submission.submit": "Submission handed in",
  "submission.withdraw": "Submission withdrawn",
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
