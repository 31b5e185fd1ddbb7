/** Most fields one form may have: more is no form of ours. */
const FIELD_LIMIT = 2_000;
/** Most items of a list in a form. */
const LIST_LIMIT = 500;

type Tree = { [name: string]: Tree | string | readonly string[] };

/** Fields of the framework itself, which every server action carries. */
const isOurs = (name: string): boolean => !name.startsWith("$ACTION");

/** What was typed, field by field; files are not text and stay out. */
export function typedOf(data: FormData): Readonly<Record<string, readonly string[]>> {
  const typed: Record<string, string[]> = {};
  for (const [name, value] of data) {
    if (typeof value !== "string" || !isOurs(name)) continue;
    const list = typed[name] ?? [];
    list.push(value);
    typed[name] = list;
  }
  return typed;
}

function place(tree: Tree, path: readonly string[], value: string | readonly string[]): void {
  const [head = "", ...rest] = path;
  if (rest.length === 0) {
    tree[head] = value;
    return;
  }
  const branch = tree[head];
  const next: Tree = typeof branch === "object" && !Array.isArray(branch) ? (branch as Tree) : {};
  tree[head] = next;
  place(next, rest, value);
}

/** Branches whose names all are numbers are lists, in order of the numbers; gaps close. */
function withLists(tree: Tree): unknown {
  const names = Object.keys(tree);
  const plain = (value: Tree[string] | undefined) =>
    typeof value === "object" && !Array.isArray(value) ? withLists(value as Tree) : value;
  const isList =
    names.length > 0 && names.every((name) => /^\d{1,3}$/.test(name) && Number(name) < LIST_LIMIT);
  if (isList) return names.sort((a, b) => Number(a) - Number(b)).map((name) => plain(tree[name]));
  return Object.fromEntries(names.map((name) => [name, plain(tree[name])]));
}

/**
 * What a form says, as an object: a field `numbers.2.from` becomes `{ numbers: [{ from }] }`, one whose name ends with
 * `[]` a list of strings. The type is what the caller's procedure takes; its schema checks it, so nothing is trusted here.
 *
 * @throws RangeError when the form has more than 2,000 fields
 */
export function enteredOf<T>(data: FormData): T {
  const typed = Object.entries(typedOf(data));
  if (typed.length > FIELD_LIMIT) throw new RangeError(`a form of ${typed.length} fields`);
  const tree: Tree = Object.create(null);
  for (const [name, values] of typed) {
    if (/(^|\.)(__proto__|constructor|prototype)(\.|$)/.test(name)) continue;
    if (name.endsWith("[]")) place(tree, name.slice(0, -2).split("."), values);
    else place(tree, name.split("."), values.at(-1) ?? "");
  }
  return withLists(tree) as T;
}
