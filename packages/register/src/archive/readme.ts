import type { Field } from "./field";
import { type Kind, kindFile } from "./kind";

const WIDTH = 78;

function wrapped(text: string, indent = "", hanging = indent): string {
  const lines: string[] = [];
  let line = indent;
  for (const word of text.split(" ")) {
    if (line.length + word.length + 1 > WIDTH && line.trim() !== "") {
      lines.push(line);
      line = hanging;
    }
    line = line.trim() === "" ? `${line}${word}` : `${line} ${word}`;
  }
  return [...lines, line].join("\n");
}

const paragraph = (...sentences: readonly string[]) => wrapped(sentences.join(" "));

function fieldNote({ unit, refersTo, person }: Field): string {
  const notes = [
    unit === undefined ? "" : unit === "SI" ? "in SI" : `in ${unit}`,
    refersTo === undefined ? "" : `-> ${refersTo}`,
    person ? "-> member.personId" : "",
  ].filter((note) => note !== "");
  return notes.length === 0 ? "" : ` (${notes.join("; ")})`;
}

function chapter(kind: Kind): string {
  const fields = [...kind.fields].map(([name, field]) =>
    wrapped(`${name}${fieldNote(field)}: ${field.meaning}`, "    ", "      "),
  );
  return [
    `rows/${kindFile(kind.name)}.jsonl`,
    wrapped(`${kind.meaning} Sorted by ${kind.order.join(", ")}.`, "  "),
    ...fields,
  ].join("\n");
}

const personalSays = {
  true: "Personal data are in it: names and addresses of keepers, drivers and members. Treat it as you would your address book, and give it only to those who may have them.",
  false:
    "Personal data were left out: fields for the names and addresses of keepers, drivers and members are empty. Their ids stayed, so that one can still see which rows belong to one and the same person, though not to whom. Free texts and the evidence files are as they were written or photographed: look before you publish them.",
} as const;

/**
 * The plain text that goes with an archive, for a successor who has nothing else: what it is, how to read it without any
 * program of ours, what each field means, how to prove that nothing was changed.
 *
 * @param club full name of the club
 */
export function archiveReadme(club: string, kinds: readonly Kind[], personalData: boolean): string {
  const parts = [
    `${club}\nThe club's whole register, as an archive`,
    paragraph(
      "This archive holds everything the club recorded about its cars, in a form that any computer can read.",
      "You need no special program: a ZIP tool to unpack it, and a text editor.",
      personalSays[`${personalData}`],
    ),
    paragraph(
      "It records what people wrote down. It certifies nothing: before anyone works on or drives a car by it, a competent",
      "mechanic decides, and the organiser's regulations and local law apply.",
    ),
    "WHAT IS IN IT",
    [
      "README.txt      this text",
      "manifest.json   format version, the club, and of every other file its size and SHA-256",
      "schema/         one JSON Schema (draft 2020-12) a file of rows, and one of the manifest",
      "rows/           the records: JSON Lines, one kind of record a file",
      "evidence/       photographs and documents, named after the SHA-256 of their content",
    ].join("\n"),
    "HOW TO READ THE ROWS",
    paragraph(
      "A file in rows/ is text in UTF-8. Every line is one record: a JSON object in canonical form (RFC 8785), names sorted.",
      "Every field stands in every line; null means that nothing is known, or that it is not so. Many programs for data",
      "read JSON Lines; in Python it is: [json.loads(line) for line in open('rows/car.jsonl', encoding='utf-8')].",
    ),
    paragraph(
      "Records name each other by id. 'carId -> car' means: look in rows/car.jsonl for the line whose id is the same.",
      "To find everything of one car, find its line in rows/car.jsonl and search the other files for its id.",
      "Ids of people are those in rows/member.jsonl under personId.",
    ),
    paragraph(
      "A recorded value has five fields: valueKind (quantity, choice, designation, text, date, absent), entered (what somebody",
      "wrote, to the letter: 9/16 in), number and resolution (the same in SI: metre, radian, kilogram, newton, pascal, second,",
      "kelvin and what is made of them: 0.0142875), text (code, designation, text or day). 'absent' means known not to be fitted.",
    ),
    paragraph(
      "A date known to some precision has three: as written (c. 1971), the earliest and the latest day that allows. Days are",
      "year-month-day; instants are in UTC. Sides are seen from the driver's seat. What was corrected stays, with supersededAt.",
    ),
    "WHAT A CAR IS TODAY",
    paragraph(
      "It is not stored here, since it follows from the rest. Begin with the current specification of the car's series",
      "(specification-entry, as far as the car's serial, build date and options say), put what left the works over it",
      "(as-built-value), then the accepted modifications in order of fitting (modification, modification-change), and the",
      "readings of the setting sheets by day (setting-sheet, reading). Later days prevail; superseded rows do not count.",
    ),
    "HOW TO PROVE IT",
    paragraph(
      "Compute the SHA-256 of any file and compare it with manifest.json (sha256sum on most systems).",
      "The journal (rows/journal-entry.jsonl) is a chain: each entry's hash covers the hash before it, so nothing can be changed",
      "or taken out of the past without every later hash changing. An entry's hash is the SHA-256 of these, joined by '|':",
      "previousHash, the club's id, sequence, at, personId, action, noun, nounId, carId, runId, reason, before, after;",
      "'-' stands for an empty one; reason is written as a JSON string, before and after as PostgreSQL writes jsonb.",
    ),
    "THE FILES OF ROWS, FIELD BY FIELD",
    ...kinds.map(chapter),
  ];
  return `${parts.join("\n\n")}\n`;
}
