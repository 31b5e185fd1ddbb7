/** A table, enumeration or column of the models, by its name in the database, with its doc comment. */
export interface Described {
  readonly kind: "table" | "type" | "column";
  /** The table or type. */
  readonly name: string;
  /** The column; empty for a table or type. */
  readonly column: string;
  /** The text of its `///` lines; empty when it has none. */
  readonly comment: string;
}

interface Block {
  readonly kind: "model" | "enum";
  readonly name: string;
  readonly comment: string;
  readonly lines: string[];
}

const OPENS = /^(model|enum)\s+(\w+)\s*\{/;
const FIELD = /^(\w+)\s+(\w+)(\[\]|\?)?(\s|$)/;

function mapped(line: string, attribute: "@map" | "@@map"): string | undefined {
  return new RegExp(`(?<!@)${attribute}\\(\\s*(?:name:\\s*)?"([^"]+)"`).exec(line)?.[1];
}

function docText(line: string): string | undefined {
  return /^\/\/\/\s?(.*)$/.exec(line)?.[1];
}

function blocksOf(source: string): Block[] {
  const blocks: Block[] = [];
  let comment: string[] = [];
  let open: Block | undefined;
  for (const raw of source.split("\n")) {
    const line = raw.trim();
    if (open) {
      if (line === "}") open = undefined;
      else open.lines.push(line);
      continue;
    }
    const doc = docText(line);
    const opening = OPENS.exec(line);
    if (opening) {
      open = {
        kind: opening[1] as Block["kind"],
        name: opening[2] ?? "",
        comment: comment.join("\n"),
        lines: [],
      };
      blocks.push(open);
    }
    comment = doc === undefined ? [] : [...comment, doc];
  }
  return blocks;
}

function columnsOf(block: Block, table: string, models: ReadonlySet<string>): Described[] {
  const columns: Described[] = [];
  let comment: string[] = [];
  for (const line of block.lines) {
    const doc = docText(line);
    if (doc !== undefined) {
      comment.push(doc);
      continue;
    }
    const field = FIELD.exec(line);
    if (field && !models.has(field[2] ?? "")) {
      const column = mapped(line, "@map") ?? field[1] ?? "";
      columns.push({ kind: "column", name: table, column, comment: comment.join("\n") });
    }
    comment = [];
  }
  return columns;
}

/** Every table, column and enumeration that Prisma models describe, in the order written; relations have no column. */
export function describe(source: string): Described[] {
  const blocks = blocksOf(source);
  const models = new Set(blocks.filter(({ kind }) => kind === "model").map(({ name }) => name));
  return blocks.flatMap((block) => {
    const name =
      block.lines.map((line) => mapped(line, "@@map")).find((found) => found !== undefined) ?? block.name;
    const { comment } = block;
    if (block.kind === "enum") return [{ kind: "type", name, column: "", comment } as const];
    return [{ kind: "table", name, column: "", comment } as const, ...columnsOf(block, name, models)];
  });
}
