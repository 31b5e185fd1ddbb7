/**
 * Several texts in one cell of a table, parted by a stroke; a stroke or backslash of their own is written after a
 * backslash. Empty ones keep their place; a list of nothing but empty ones is an empty cell.
 * @example joinCell(["5/8 in", "16|17"]) // => "5/8 in | 16\\|17"
 */
export function joinCell(texts: readonly string[]): string {
  if (texts.every((text) => text === "")) return "";
  return texts.map((text) => text.replace(/[\\|]/g, "\\$&")).join(" | ");
}

/** The texts of a cell that {@link joinCell} wrote, or that a person parted by strokes; trimmed. An empty cell has none. */
export function splitCell(cell: string): readonly string[] {
  if (cell.trim() === "") return [];
  const texts: string[] = [""];
  for (const [part] of cell.matchAll(/\\[\s\S]|[\s\S]/g)) {
    if (part === "|") texts.push("");
    else texts[texts.length - 1] += part.length > 1 && /[\\|]/.test(part.charAt(1)) ? part.charAt(1) : part;
  }
  return texts.map((text) => text.trim());
}

/** A figure with its sign, which no spreadsheet takes for a formula that does anything. */
const figure = /^[-+][\d.,][\d.,/°'" ]*[\p{L}°'"%/ ]*$/u;

/** A cell a spreadsheet cannot take for a formula: one that begins like one gets an apostrophe before it. */
export function guardCell(cell: string): string {
  return /^'*[=+\-@\t\r]/.test(cell) && !figure.test(cell) ? `'${cell}` : cell;
}

/** Takes the apostrophe of {@link guardCell} off again. */
export function unguardCell(cell: string): string {
  return /^''*[=+\-@\t\r]/.test(cell) ? cell.slice(1) : cell;
}
