import type { Faces } from "../font/face";
import { replacement } from "../font/repertoire";

const plain = /^[\x20-\x7e]*$/;
const invisible = /\u00ad|[\u200b-\u200f]|[\u202a-\u202e]|[\u2060-\u206f]|[\ufe00-\ufe0f]|\ufeff/gu;
const graphemes = new Intl.Segmenter("en-GB", { granularity: "grapheme" });

/** Longest single text a sheet takes; more is an input gone wrong, not a remark. */
const longestText = 5_000;

export interface PrintableModel<Model> {
  readonly model: Model;
  /** Characters the font has no shape for; each stands on the sheet as an empty square. */
  readonly unprintable: number;
}

/** The same model with every text in characters the font can draw, and how many could not be kept. */
export function printableModel<Model>(model: Model, faces: Faces, what: string): PrintableModel<Model> {
  let unprintable = 0;
  const walk = (value: unknown): unknown => {
    if (typeof value === "string") {
      if (value.length > longestText)
        throw new RangeError(tooLong(what, pathOf(model, value) ?? "a text", value));
      const text = printable(value, faces);
      unprintable += text.lost;
      return text.text;
    }
    if (Array.isArray(value)) return mapSame(value, walk);
    if (typeof value !== "object" || value === null) return value;
    return walkObject(value, walk);
  };
  return { model: walk(model) as Model, unprintable };
}

/** Where a text stands in a model: "stations[2].checks[0].why". Worked out only when it is to be told. */
function pathOf(model: unknown, sought: string, path = ""): string | undefined {
  if (model === sought) return path;
  if (typeof model !== "object" || model === null) return undefined;
  for (const [key, item] of Object.entries(model)) {
    const step = Array.isArray(model) ? `${path}[${key}]` : path === "" ? key : `${path}.${key}`;
    const found = pathOf(item, sought, step);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Keeps the very object when nothing in it changed, which is nearly always. */
function walkObject(value: object, walk: (value: unknown) => unknown): unknown {
  const held = value as Record<string, unknown>;
  let changed: Record<string, unknown> | undefined;
  for (const key of Object.keys(held)) {
    const item = held[key];
    const mapped = walk(item);
    if (mapped === item) continue;
    changed ??= { ...held };
    changed[key] = mapped;
  }
  return changed ?? value;
}

function mapSame(items: readonly unknown[], map: (item: unknown) => unknown): readonly unknown[] {
  const mapped = items.map((item) => map(item));
  return mapped.every((item, at) => item === items[at]) ? items : mapped;
}

/** One text in drawable characters; `lost` counts what a reader would call characters, not code points. */
export function printable(raw: string, faces: Faces): { readonly text: string; readonly lost: number } {
  if (plain.test(raw)) return { text: raw, lost: 0 };
  const drawn = (text: string) => drawable(text, faces);
  const composed = raw
    .normalize("NFC")
    .replace(/\r\n?|[\u0085\u2028\u2029]/g, "\n")
    .replaceAll("\t", " ");
  const bare = composed.replace(invisible, "");
  if (drawn(bare)) return { text: bare, lost: 0 };
  let text = "";
  let lost = 0;
  for (const { segment } of graphemes.segment(composed)) {
    const visible = segment.replace(invisible, "");
    if (visible === "" || drawn(visible)) text += visible;
    else if (/^\p{Zs}$/u.test(visible)) text += " ";
    else {
      text += replacement;
      lost++;
    }
  }
  return { text, lost };
}

function drawable(text: string, { regular, bold }: Faces): boolean {
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 0x0a) continue;
    if (!regular.has(code) || !bold.has(code)) return false;
  }
  return true;
}

function tooLong(what: string, path: string, value: string): string {
  const start = value.slice(0, 40);
  return (
    `${what}: ${path} has ${value.length} characters ` +
    `("${start}…"); at most ${longestText} can be printed`
  );
}
