// Reads a workbook in a thread of its own: a large one takes seconds and hundreds of megabytes, which a web process
// that others wait for must not spend, and a thread that runs out of memory can be told from one that answers.
// Plain JavaScript, since a thread is started by file and no loader goes with it.
import { parentPort, workerData } from "node:worker_threads";
import { readOds } from "hucre/ods";
import { readXlsx } from "hucre/xlsx";

/** Rows in one message: the receiver takes them between other work. */
const BATCH = 1_000;

const { bytes, kind, sheet, limits } = workerData;

/** What a cell's bare value does not say; nothing for a plain one. */
function detailOf(cell) {
  if (!cell) return undefined;
  const { type, formula, style } = cell;
  const format = style?.numFmt;
  if (formula === undefined && type !== "error" && format === undefined) return undefined;
  return { formula, format, error: type === "error" };
}

const isCell = (cell) => cell !== null && cell !== undefined && cell !== "";
const isFilled = ({ rows }) => rows.some((row) => row.some(isCell));
/** Headings and a row under them, rather than a title or a note to oneself. */
const isTable = ({ rows }) => rows.filter((row) => row.filter(isCell).length > 1).length > 1;

function chosen(sheets) {
  if (sheet !== undefined) return sheets.find(({ name }) => name === sheet);
  const shown = sheets.filter(({ hidden, veryHidden }) => !hidden && !veryHidden);
  return shown.find(isTable) ?? shown.find(isFilled) ?? shown[0];
}

function widthOf(rows) {
  return rows.reduce((width, row) => Math.max(width, row.length), 0);
}

const read = kind === "xlsx" ? readXlsx : readOds;
const workbook = await read(bytes, { readStyles: true, dateSystem: "auto" });
const one = chosen(workbook.sheets);
const rows = one?.rows ?? [];
parentPort.postMessage({
  part: "sheets",
  sheets: workbook.sheets.map(({ name, hidden, veryHidden }) => ({
    name,
    hidden: Boolean(hidden || veryHidden),
  })),
  chosen: one?.name,
  rows: rows.length,
  columns: widthOf(rows),
  merges: (one?.merges ?? []).slice(0, limits.columns * 4),
});
// The receiver refuses too many by the figures above; sending them would only cost.
if (rows.length <= limits.rows + limits.headRows) {
  for (let start = 0; start < rows.length; start += BATCH) {
    const batch = rows.slice(start, start + BATCH);
    const details = batch.flatMap((row, offset) =>
      row.flatMap((_, column) => {
        const detail = detailOf(one.cells?.get(`${start + offset},${column}`));
        return detail ? [[offset, column, detail]] : [];
      }),
    );
    parentPort.postMessage({ part: "rows", start, rows: batch, details });
  }
}
parentPort.postMessage({ part: "end" });
