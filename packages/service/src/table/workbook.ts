import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { refused } from "@trunnion/register";
import { type CellDetail, cellText, type RawCell } from "./cell";
import { type Block, withHeadings } from "./head-row";
import { nothingThere, type Table, tableLimits } from "./limit";
import { type MeasuredWorkbook, workbookLimits } from "./unpack";

/** What the thread posts; see `bin/read-workbook.mjs`. */
type Message =
  | {
      readonly part: "sheets";
      readonly sheets: readonly { readonly name: string; readonly hidden: boolean }[];
      readonly chosen: string | undefined;
      readonly rows: number;
      readonly columns: number;
      readonly merges: readonly Block[];
    }
  | {
      readonly part: "rows";
      readonly start: number;
      readonly rows: readonly (readonly RawCell[])[];
      readonly details: readonly (readonly [row: number, column: number, detail: CellDetail])[];
    }
  | { readonly part: "end" };

// Asked of the process: a bundler that sees `new Worker(…)` wants to bundle the program too, which is plain JavaScript on disk.
const { Worker: Thread } = process.getBuiltinModule("node:worker_threads");

const PROGRAM = "bin/read-workbook.mjs";

/**
 * Where the thread's program lies. Looked for from the program that runs and from the working directory upwards: a
 * bundler gives this module an address that is on no disk.
 */
function programPath(): string {
  const starts = [...process.argv.slice(1, 2).map(dirname), process.cwd()];
  for (const start of starts) {
    for (let folder = start; ; folder = dirname(folder)) {
      const candidate = join(folder, "node_modules", "@trunnion/service", PROGRAM);
      if (existsSync(candidate)) return candidate;
      if (dirname(folder) === folder) break;
    }
  }
  throw new Error(`${PROGRAM} not found from ${starts.join(" and ")} upwards`);
}

export interface WorkbookInput {
  readonly workbook: MeasuredWorkbook;
  readonly file: string;
  /** Sheet by its name; the first that is shown and has a table in it when left out. */
  readonly sheet?: string;
  readonly head?: number;
}

class Taking {
  readonly cells: string[][] = [];
  merges: readonly Block[] = [];
  sheets: NonNullable<Table["sheets"]> = [];
  sheet = "";

  constructor(private readonly input: WorkbookInput) {}

  take(message: Message): void {
    if (message.part === "sheets") this.takeSheets(message);
    if (message.part === "rows") this.takeRows(message);
  }

  private takeSheets({ sheets, chosen, rows, columns, merges }: Message & { part: "sheets" }): void {
    const { file, sheet } = this.input;
    const names = sheets.map(({ name }) => name);
    if (chosen === undefined) throw refused("SHEET_NOT_FOUND", { file, sheet: sheet ?? "", known: names });
    if (columns > tableLimits.columns)
      throw refused("TABLE_TOO_WIDE", { file, columns, limit: tableLimits.columns });
    if (rows > tableLimits.rows + workbookLimits.headRows) {
      throw refused("TABLE_TOO_LONG", { file, limit: tableLimits.rows });
    }
    this.merges = merges;
    this.sheet = chosen;
    this.sheets = sheets.slice(0, workbookLimits.sheets);
  }

  private takeRows({ start, rows, details }: Message & { part: "rows" }): void {
    const told = new Map(
      details.map(([row, column, detail]) => [row * tableLimits.columns + column, detail]),
    );
    for (const [offset, row] of rows.entries()) {
      const cells = Array.from(row, (value, column) =>
        cellText(value, told.get(offset * tableLimits.columns + column)),
      );
      const long = cells.findIndex((cell) => cell.length > workbookLimits.cell);
      if (long >= 0) {
        const problem = `the cell in column ${long + 1} has ${cells[long]?.length} characters; at most ${workbookLimits.cell} are read`;
        throw refused("TABLE_BROKEN", { file: this.input.file, line: start + offset + 1, problem });
      }
      this.cells.push(cells);
    }
  }

  table(): Table {
    const { file, workbook } = this.input;
    const rows = this.cells.map((cells, index) => ({ line: index + 1, cells }));
    const { head } = this.input;
    const read = withHeadings(rows, { merges: this.merges, ...(head === undefined ? {} : { head }) });
    if (!read) throw nothingThere(file, head);
    return { ...read, kind: workbook.kind, sheet: this.sheet, sheets: this.sheets };
  }
}

function outOfMemory(error: Error, file: string): Error {
  if ((error as NodeJS.ErrnoException).code !== "ERR_WORKER_OUT_OF_MEMORY") {
    return refused("WORKBOOK_BROKEN", { file, problem: error.message.split("\n")[0]?.slice(0, 200) ?? "" });
  }
  const problem = `reading it takes more than ${workbookLimits.memoryMb} MB of memory`;
  return refused("WORKBOOK_BROKEN", { file, problem });
}

/**
 * Reads one sheet of a workbook in a thread of its own, within bounds of time and memory.
 *
 * @throws Refusal SHEET_NOT_FOUND, FILE_EMPTY, FILE_LOCKED, TABLE_TOO_WIDE, TABLE_TOO_LONG, TABLE_BROKEN for a cell that is too
 *   long, WORKBOOK_BROKEN for what the reader cannot read, or not within those bounds
 */
export async function readWorkbook(input: WorkbookInput): Promise<Table> {
  const { workbook, file, sheet } = input;
  const { bytes, kind } = workbook;
  const limits = { rows: tableLimits.rows, columns: tableLimits.columns, headRows: workbookLimits.headRows };
  const worker = new Thread(programPath(), {
    workerData: { bytes, kind, limits, ...(sheet === undefined ? {} : { sheet }) },
    resourceLimits: { maxOldGenerationSizeMb: workbookLimits.memoryMb },
    // Not the parent's loaders: the thread's program is plain JavaScript.
    execArgv: [],
  });
  const taking = new Taking(input);
  try {
    await new Promise<void>((resolve, reject) => {
      const late = setTimeout(() => {
        const problem = `reading it takes longer than ${workbookLimits.ms / 1_000} s`;
        reject(refused("WORKBOOK_BROKEN", { file, problem }));
      }, workbookLimits.ms);
      worker.on("error", (error: Error) => reject(outOfMemory(error, file)));
      worker.on("exit", () => reject(refused("WORKBOOK_BROKEN", { file, problem: "its reader ended" })));
      worker.on("message", (message: Message) => {
        try {
          if (message.part === "end") resolve();
          else taking.take(message);
        } catch (error) {
          reject(error);
        }
      });
      worker.on("exit", () => clearTimeout(late));
    });
  } finally {
    await worker.terminate();
  }
  return taking.table();
}
