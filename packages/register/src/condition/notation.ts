import type { Condition } from "./condition";
import { conditionLimits, conditionSchema } from "./schema";

/** Longest condition in an address, in characters. */
export const notationLimit = 4_000;

/** What an address may hold as it is; everything else is the hexadecimal of its UTF-8 bytes, each after a star. */
function escaped(text: string): string {
  return encodeURIComponent(text)
    .replace(/[_!'()*~]/g, (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`)
    .replaceAll("%", "*");
}

function unescaped(word: string): string {
  if (!/^(?:[A-Za-z0-9.-]|\*[0-9A-F]{2})*$/.test(word)) throw new Unreadable(word);
  try {
    return decodeURIComponent(word.replaceAll("*", "%"));
  } catch {
    throw new Unreadable(word);
  }
}

type Of<O extends Condition["op"]> = Extract<Condition, { readonly op: O }>;
type About = Extract<Condition, { readonly characteristic: string }>;

function aboutWords(condition: About): readonly string[] {
  const { op, characteristic: key } = condition;
  const head = "side" in condition && condition.side !== undefined ? `${op}.${condition.side}` : op;
  switch (condition.op) {
    case "recorded":
    case "absent":
      return [head, key];
    case "number":
      return [head, key, condition.is, String(condition.si)];
    case "code":
    case "verdict":
      return [`${head}${condition.in.length}`, key, ...condition.in];
    case "textHas":
      return [head, key, condition.text];
    case "date":
      return [head, key, condition.is, condition.date];
    case "against":
      return [head, key, condition.measure, condition.is, String(condition.si)];
    case "sidesDiffer":
      return [head, key, condition.by === undefined ? "" : String(condition.by)];
    case "readingOlderThan":
      return [head, key, String(condition.days)];
  }
}

function wordsOf(condition: Condition): readonly string[] {
  switch (condition.op) {
    case "always":
      return ["always"];
    case "all":
    case "any":
      return [`${condition.op}${condition.of.length}`, ...condition.of.flatMap(wordsOf)];
    case "not":
      return ["not", ...wordsOf(condition.of)];
    case "series":
    case "status":
    case "anyVerdict":
    case "modified":
      return [`${condition.op}${condition.in.length}`, ...condition.in];
    case "known":
      return ["known", condition.what];
    case "built":
      return ["built", condition.from ?? "", condition.to ?? ""];
    default:
      return aboutWords(condition);
  }
}

/**
 * A condition as one word of an address: its parts from the outside in, with how many follow, between underscores.
 * Short, readable, and of signs only that an address leaves alone.
 * @example writeCondition({ op: "series", in: ["series-2"] }) // => "series1_series-2"
 */
export function writeCondition(condition: Condition): string {
  return wordsOf(condition).map(escaped).join("_");
}

/** A word that is no part of a condition where it stands. */
class Unreadable extends Error {
  constructor(readonly word: string) {
    super(word);
  }
}

/** Operators that are followed by a list alone. */
const lists: ReadonlySet<string> = new Set(["series", "status", "anyVerdict", "modified"]);

const headPattern = /^([A-Za-z]+)(?:\.(whole|left|right))?(\d{1,3})?$/;

/** Reads word after word; what comes out is checked by the schema. */
class Reader {
  readonly #words: readonly string[];
  #at = 0;

  constructor(text: string) {
    this.#words = text.split("_");
  }

  get isAtEnd(): boolean {
    return this.#at >= this.#words.length;
  }

  #word(): string {
    const word = this.#words[this.#at];
    if (word === undefined) throw new Unreadable("the end");
    this.#at += 1;
    return unescaped(word);
  }

  #list(count: number): readonly string[] {
    return Array.from({ length: Math.min(count, conditionLimits.list + 1) }, () => this.#word());
  }

  #number(): number {
    const word = this.#word();
    if (!/^-?\d+(?:\.\d+)?(?:e[+-]?\d+)?$/.test(word)) throw new Unreadable(word);
    return Number(word);
  }

  condition(level = 1): unknown {
    const head = this.#word();
    const [, op = "", side, digits] = headPattern.exec(head) ?? [];
    if (op === "" || level > conditionLimits.depth) throw new Unreadable(head);
    const count = Number(digits ?? 0);
    const onSide = side === undefined ? {} : { side };
    if (op === "always") return { op };
    if (op === "not") return { op, of: this.condition(level + 1) };
    if (op === "all" || op === "any") {
      const most = Math.min(count, conditionLimits.list + 1);
      return { op, of: Array.from({ length: most }, () => this.condition(level + 1)) };
    }
    if (op === "known") return { op, what: this.#word() };
    if (lists.has(op)) return { op, in: this.#list(count) };
    if (op === "built") return { op, ...this.#optional("from"), ...this.#optional("to") };
    return { op, characteristic: this.#word(), ...onSide, ...this.#rest(op as About["op"], count) };
  }

  #optional(name: "from" | "to"): object {
    const word = this.#word();
    return word === "" ? {} : { [name]: word };
  }

  #rest(op: About["op"], count: number): object {
    switch (op) {
      case "recorded":
      case "absent":
        return {};
      case "number":
        return { is: this.#word(), si: this.#number() };
      case "code":
      case "verdict":
        return { in: this.#list(count) };
      case "textHas":
        return { text: this.#word() };
      case "date":
        return { is: this.#word(), date: this.#word() };
      case "against":
        return { measure: this.#word(), is: this.#word(), si: this.#number() };
      case "sidesDiffer":
        return this.#by();
      case "readingOlderThan":
        return { days: this.#number() };
      default:
        throw new Unreadable(op);
    }
  }

  #by(): Partial<Of<"sidesDiffer">> {
    const word = this.#word();
    if (word === "") return {};
    if (!/^\d+(?:\.\d+)?(?:e[+-]?\d+)?$/.test(word)) throw new Unreadable(word);
    return { by: Number(word) };
  }
}

/** A condition read from an address, or what is wrong with it in a sentence. */
export type ReadCondition =
  | { readonly ok: true; readonly condition: Condition }
  | { readonly ok: false; readonly problem: string };

function broken(problem: string): ReadCondition {
  return { ok: false, problem };
}

const quotedLimit = 40;
const quoted = (word: string) => `"${word.slice(0, quotedLimit)}${word.length > quotedLimit ? "…" : ""}"`;

/**
 * Reads what {@link writeCondition} wrote. Refuses, with what is wrong, a text that was cut short, changed by hand or
 * is longer than {@link notationLimit}; what it gives has passed the schema.
 */
export function readCondition(text: string): ReadCondition {
  if (text.length > notationLimit) {
    return broken(`it has ${text.length} characters, and at most ${notationLimit} are read`);
  }
  const reader = new Reader(text);
  try {
    const raw = reader.condition();
    if (!reader.isAtEnd) return broken("there is more after its end");
    const read = conditionSchema.safeParse(raw);
    if (read.success) return { ok: true, condition: read.data };
    const [issue] = read.error.issues;
    return broken(`at ${issue?.path.join(".") || "its head"}: ${issue?.message ?? "it cannot be read"}`);
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    return broken(
      error.word === "the end" ? "it was cut short" : `${quoted(error.word)} is no part of a condition`,
    );
  }
}
