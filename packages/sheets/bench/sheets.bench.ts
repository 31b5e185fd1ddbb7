import { readFileSync } from "node:fs";
import { monitorEventLoopDelay } from "node:perf_hooks";
import fontkit from "@pdf-lib/fontkit";
import type { SheetModel } from "@trunnion/register";
import { PDFDocument } from "pdf-lib";
import { resolveFontFile } from "../src/font/font-file";
import { drawSheets, drawSheetsAside } from "../src/index";
import { type ReadDocument, readBack } from "../src/sample/read-back";
import { plainSheet, sampleSheet } from "../src/sample/sample-sheet";

export interface SheetsBenchRow {
  readonly group: "sheets";
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** The same texts at the same places by pdf-lib's own `drawText`, in the same run. */
  readonly peer?: { readonly name: string; readonly value: number };
  /** Peer over ours. */
  readonly ratio?: number;
}

const paper = "A4" as const;
const warmUps = 30;
const samples = 41;
const eventSize = 200;
const manyCars = 2_000;
/** The peer is measured on fewer cars and scaled, or the bench would take minutes. */
const peerCars = 20;

/** One sheet warm, and a whole event; milliseconds, seconds, kilobytes. */
export async function sheetsBench(): Promise<SheetsBenchRow[]> {
  const full = [sampleSheet()];
  const ordinary = Array.from({ length: eventSize }, (_, at) => plainSheet(at + 1));
  const modified = ordinary.map(({ entry, car }): SheetModel => sampleSheet({ entry, car }));
  for (let run = 0; run < warmUps; run++) await drawSheets(full, { paper });

  const one = await median(() => drawSheets(full, { paper }), samples);
  const read = await readBack(await drawSheets(full, { paper }));
  const peerOne = await median(() => drawWithPdfLib(read, 1), 5);
  const plain = await median(() => drawSheets(ordinary, { paper }), 5);
  const readPlain = await readBack(await drawSheets(ordinary.slice(0, 1), { paper }));
  const peerPlain = (await median(() => drawWithPdfLib(readPlain, peerCars), 1)) * (eventSize / peerCars);
  const forms = await cpuAndWall(() => drawSheets(ordinary, { paper, kind: "fillable" }));
  const tagged = await cpuAndWall(() => drawSheets(ordinary, { paper, kind: "tagged" }));
  const plainCpu = await cpuAndWall(() => drawSheets(ordinary, { paper }));
  const many = Array.from({ length: manyCars }, (_, at) => plainSheet(at + 1));
  const linear = await cpuAndWall(() => drawSheets(many, { paper }));
  const held = await longestHold(() => drawSheetsAside(ordinary, { paper }));
  const rich = await median(() => drawSheets(modified, { paper }), 5);
  const bytes = (await drawSheets(ordinary, { paper })).length;
  return [
    row("one sheet, 8 deviations, warm", one, "ms", peerOne),
    row(`${eventSize} ordinary cars in one file`, plain / 1000, "s", peerPlain / 1000),
    row(`${eventSize} modified cars in one file`, rich / 1000, "s"),
    row(`${eventSize} ordinary cars, processor time`, plainCpu.cpu / 1000, "s"),
    row(`${eventSize} ordinary cars to fill in`, forms.wall / 1000, "s"),
    row(`${eventSize} ordinary cars to fill in, processor time`, forms.cpu / 1000, "s"),
    row(`${eventSize} ordinary cars tagged and to fill in`, tagged.wall / 1000, "s"),
    row(`${eventSize} ordinary cars tagged and to fill in, processor time`, tagged.cpu / 1000, "s"),
    row(
      `${manyCars} cars over ${eventSize}, processor time a car`,
      linear.cpu / manyCars / (plainCpu.cpu / eventSize),
      "×",
    ),
    row("longest hold of the event loop while a thread draws", held, "ms"),
    row("most memory of the process so far", process.resourceUsage().maxRSS / 1024, "MB"),
    row(`size of ${eventSize} ordinary cars`, bytes / 1000, "kB"),
  ];
}

/** Milliseconds on the clock and of all the process's threads: on a busy machine only the second tells. */
async function cpuAndWall(
  work: () => Promise<unknown>,
): Promise<{ readonly wall: number; readonly cpu: number }> {
  const before = process.cpuUsage();
  const start = performance.now();
  await work();
  const { user, system } = process.cpuUsage(before);
  return { wall: performance.now() - start, cpu: (user + system) / 1000 };
}

/** Longest time, in milliseconds, that nothing else could run while work was done. */
async function longestHold(work: () => Promise<unknown>): Promise<number> {
  await work(); // starts the thread
  const delay = monitorEventLoopDelay({ resolution: 5 });
  delay.enable();
  await work();
  delay.disable();
  return delay.max / 1e6;
}

function row(name: string, value: number, unit: string, peer?: number): SheetsBenchRow {
  const round = (number: number) => Math.round(number * 1000) / 1000;
  const base = { group: "sheets", name, value: round(value), unit } as const;
  return peer === undefined
    ? base
    : { ...base, peer: { name: "pdf-lib's own calls", value: round(peer) }, ratio: round(peer / value) };
}

async function median(work: () => Promise<unknown>, times: number): Promise<number> {
  const taken: number[] = [];
  for (let time = 0; time < times; time++) {
    const start = performance.now();
    await work();
    taken.push(performance.now() - start);
  }
  return taken.sort((a, b) => a - b)[Math.floor(times / 2)] ?? 0;
}

const fontBytes = readFileSync(resolveFontFile("400Regular/SourceSans3_400Regular.ttf"));

/** Every text of the sheet as read back, drawn where it stood, by the library's high-level calls. */
async function drawWithPdfLib(read: ReadDocument, cars: number): Promise<Uint8Array> {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.registerFontkit(fontkit);
  const font = await document.embedFont(fontBytes, { subset: true });
  for (let car = 0; car < cars; car++) {
    for (const { width, height, items } of read.pages) {
      const page = document.addPage([width, height]);
      for (const { text, x, y, size } of items) page.drawText(text, { x, y, size, font });
    }
  }
  return document.save();
}
