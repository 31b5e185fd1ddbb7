import { carStatusWords } from "@trunnion/register";
import type { Option } from "../../../components/form/form-field";

const options = (words: Readonly<Record<string, string>>): readonly Option[] =>
  Object.entries(words).map(([value, label]) => ({ value, label }));

export const kindWords: Readonly<Record<string, string>> = {
  registration: "Registration mark",
  engine: "Engine number",
  commission: "Commission number",
  body: "Body number",
  chassis: "Chassis number",
};
export const kindOptions = options(kindWords);

export const standingWords: Readonly<Record<string, string>> = {
  accepted: "Accepted",
  disputed: "Disputed",
  restamped: "Re-stamped",
};
export const standingOptions = options(standingWords);

export const statusOptions = options(carStatusWords);

export const trustWords: Readonly<Record<string, string>> = {
  documented: "Documented",
  stated: "Stated by a keeper",
  inferred: "Inferred",
  unknown: "Not known how",
};
export const trustOptions = options(trustWords);

export const sourceKindOptions = options({
  worksRecord: "Works record",
  publication: "Publication",
  letter: "Letter",
  photograph: "Photograph",
  keeperStatement: "Keeper's statement",
  registerFile: "Register file",
  inspection: "Inspection",
  other: "Something else",
});

export const dateHint =
  "As far as it is known: 1971, 3/72, 12.3.1972 (day first), c. 1971, before March 1972.";
export const reasonHint =
  "For the journal: what shows that it is so. Name no persons: the journal cannot be erased.";
