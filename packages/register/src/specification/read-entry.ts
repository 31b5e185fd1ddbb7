import type { CharacteristicBook } from "../characteristic/book";
import type { Characteristic, Side } from "../characteristic/characteristic";
import { foldName } from "../characteristic/fold-name";
import { explainNumber, type NumberPattern } from "../identity/number";
import { parsePartialDate } from "../identity/partial-date";
import type { FieldProblem } from "../refusal/invalid";
import { parseLimit, parseValue } from "../value/parse";
import type { Value } from "../value/value";
import type { SeriesFacts } from "./applicability";
import { checkSpecification } from "./check";
import { type AlternativeText, type EntryText, inRoleOrder, specificationLimits } from "./entry-text";
import {
  type Alternative,
  type Applicability,
  type Limits,
  noSourceTitle,
  type Source,
  type SpecificationEntry,
  type Trust,
  trusts,
} from "./specification";

/** What the reading of an entry goes by. */
export interface EntryReading {
  /** Id the entry gets. */
  readonly id: string;
  readonly book: CharacteristicBook;
  /** The series it is for; left out, spans and options are taken as they are written. */
  readonly series?: SeriesFacts & { readonly pattern: NumberPattern };
}

/** An entry, or everything that is wrong with it, by the part of {@link EntryText}: `alternatives.1.value`. */
export type ReadEntry =
  | { readonly ok: true; readonly entry: SpecificationEntry }
  | { readonly ok: false; readonly problems: readonly FieldProblem[] };

/** Latest day a build date is read up to; where a year has two digits, a nearer one, or 71 would be 2071. */
const HORIZON = { fourDigits: "2099-12-31", twoDigits: "2029-12-31" } as const;
/** Largest serial that is kept. */
const LARGEST_SERIAL = 999_999_999;

const sideNames: Readonly<Record<string, Side>> = {
  "": "whole",
  both: "whole",
  "both sides": "whole",
  whole: "whole",
  left: "left",
  l: "left",
  nearside: "left",
  right: "right",
  r: "right",
  offside: "right",
};

const clean = (text: string) => text.replace(/\r\n?/g, "\n").trim();

class Reader {
  readonly problems: FieldProblem[] = [];
  constructor(
    readonly text: EntryText,
    readonly reading: EntryReading,
  ) {}

  add(field: string, message: string): undefined {
    this.problems.push({ field, message });
    return undefined;
  }

  /** A text that is kept as it is: bounded, and without what no sheet can print. */
  kept(field: string, text: string, longest: number): string {
    const told = clean(text);
    const characters = [...told].length;
    if (characters > longest) this.add(field, `${characters} characters; at most ${longest} are kept`);
    if (/[^\P{Cc}\n]/u.test(told)) this.add(field, "holds control characters; write plain text");
    return told;
  }

  characteristic(): Characteristic | undefined {
    const name = clean(this.text.characteristic);
    if (name === "") return this.add("characteristic", "name the characteristic by its key or its label");
    const { book } = this.reading;
    const found = book.find(name) ?? book.named(name);
    return found ?? this.add("characteristic", `there is no characteristic "${name}" in the dictionary`);
  }

  side(): Side {
    const side = sideNames[foldName(this.text.side)];
    if (side === undefined)
      this.add("side", `"${clean(this.text.side)}" is no side; expected both, left or right`);
    return side ?? "whole";
  }

  value(characteristic: Characteristic, field: string, text: string): Value | undefined {
    const parsed = parseValue(characteristic, this.kept(field, text, specificationLimits.value));
    return parsed.ok ? parsed.value : this.add(field, parsed.problem.message);
  }

  limits(characteristic: Characteristic): Limits | undefined {
    const limits: { lower?: number; upper?: number } = {};
    for (const end of ["lower", "upper"] as const) {
      if (clean(this.text[end]) === "") continue;
      const parsed = parseLimit(characteristic, clean(this.text[end]));
      if (parsed.ok) limits[end] = parsed.si;
      else this.add(end, parsed.problem.message);
    }
    return Object.keys(limits).length === 0 ? undefined : limits;
  }

  serial(field: "serialFrom" | "serialTo"): number | undefined {
    const text = clean(this.text[field]);
    const pattern = this.reading.series?.pattern;
    if (text === "") return undefined;
    if (/^\d{1,9}$/.test(text) && (pattern === undefined || text.length <= pattern.digits))
      return Number(text);
    if (pattern === undefined)
      return this.add(field, `"${text}" is no serial; expected a whole number up to ${LARGEST_SERIAL}`);
    const explained = explainNumber(text, pattern);
    return explained.ok ? explained.serial : this.add(field, explained.problem);
  }

  day(field: "builtFrom" | "builtTo"): string | undefined {
    const text = clean(this.text[field]);
    if (text === "") return undefined;
    const today = /\d{4}/.test(text) ? HORIZON.fourDigits : HORIZON.twoDigits;
    const parsed = parsePartialDate(text, { today });
    const right = "expected a day, month or year such as 1971-03-12, 3/71 or 1971";
    if (!parsed.ok) return this.add(field, `"${text}" is no date; ${right}`);
    const { precision, earliest, latest } = parsed.date;
    if (precision === "circa" || precision === "before" || precision === "after") {
      return this.add(field, `"${text}" leaves open where the span ends; ${right}`);
    }
    return field === "builtFrom" ? earliest : latest;
  }

  option(): string | undefined {
    const text = this.kept("option", this.text.option, specificationLimits.locus);
    if (text === "") return undefined;
    return this.reading.series?.options.find((code) => foldName(code) === foldName(text)) ?? text;
  }

  applicability(): Applicability {
    const parts = {
      serialFrom: this.serial("serialFrom"),
      serialTo: this.serial("serialTo"),
      builtFrom: this.day("builtFrom"),
      builtTo: this.day("builtTo"),
      option: this.option(),
    };
    return Object.fromEntries(Object.entries(parts).filter(([, part]) => part !== undefined));
  }

  trust(field: string, text: string, otherwise: Trust): Trust {
    const told = foldName(text);
    if (told === "") return otherwise;
    const found = trusts.find((trust) => trust === told);
    if (found === undefined) this.add(field, `"${clean(text)}" is none of ${trusts.join(", ")}`);
    return found ?? otherwise;
  }

  source(): Source {
    const { source, locus, trust } = this.text;
    const title = this.kept("source", source, specificationLimits.source);
    const page = this.kept("locus", locus, specificationLimits.locus);
    return {
      title: title === "" ? noSourceTitle : title,
      trust: this.trust("trust", trust, "unknown"),
      ...(page === "" ? {} : { locus: page }),
    };
  }

  alternativeSource(text: AlternativeText, own: Source, place: string): Source {
    const title = this.kept(`${place}.source`, text.source, specificationLimits.source);
    const page = this.kept(`${place}.locus`, text.locus, specificationLimits.locus);
    const trust = this.trust(`${place}.trust`, text.trust, own.trust);
    if (title === "" && page === "") return { ...own, trust };
    return { title: title === "" ? own.title : title, trust, ...(page === "" ? {} : { locus: page }) };
  }

  alternatives(characteristic: Characteristic, own: Source): readonly Alternative[] {
    const { alternatives } = this.text;
    const { alternatives: most } = specificationLimits;
    if (alternatives.length > most)
      this.add("alternatives", `${alternatives.length} alternatives; at most ${most} are kept`);
    return alternatives.slice(0, most).flatMap((text, index) => {
      const place = `alternatives.${index}`;
      const note = this.kept(`${place}.note`, text.note, specificationLimits.note);
      const source = this.alternativeSource(text, own, place);
      const value = this.value(characteristic, `${place}.value`, text.value);
      return value === undefined
        ? []
        : [{ role: text.role, value, source, ...(note === "" ? {} : { note }) }];
    });
  }

  entry(): SpecificationEntry | undefined {
    const characteristic = this.characteristic();
    const side = this.side();
    const applicability = this.applicability();
    const source = this.source();
    const note = this.kept("note", this.text.note, specificationLimits.note);
    if (characteristic === undefined) return undefined;
    const { nominal: text } = this.text;
    const nominal = clean(text) === "" ? undefined : this.value(characteristic, "nominal", text);
    const limits = this.limits(characteristic);
    const alternatives = this.alternatives(characteristic, source);
    return {
      id: this.reading.id,
      characteristic: characteristic.key,
      side,
      alternatives,
      applicability,
      source,
      ...(nominal === undefined ? {} : { nominal }),
      ...(limits === undefined ? {} : { limits }),
      ...(note === "" ? {} : { note }),
    };
  }
}

/**
 * Reads an entry of a specification in the trade's notation, and refuses one that contradicts itself, the dictionary or
 * its series. What lies between two entries (the same car specified twice) is for `checkSpecification` of the whole.
 *
 * What is not said stays not said: no trust is `unknown`, no source is none. An alternative without a source of its own
 * has that of its entry.
 */
export function readEntryText(text: EntryText, reading: EntryReading): ReadEntry {
  const reader = new Reader(text, reading);
  const entry = reader.entry();
  if (entry === undefined || reader.problems.length > 0) return { ok: false, problems: reader.problems };
  const contradictions = checkSpecification({ entries: [entry] }, reading.book, reading.series);
  if (contradictions.length === 0) {
    return { ok: true, entry: { ...entry, alternatives: inRoleOrder(entry.alternatives) } };
  }
  return {
    ok: false,
    problems: contradictions.map(({ field, message }) => ({ field: field ?? "nominal", message })),
  };
}
