import { execFileSync } from "node:child_process";
import { monitorEventLoopDelay } from "node:perf_hooks";
import { fileURLToPath } from "node:url";
import { drawSheets, drawSheetsAside, type SheetKind } from "../src/index";
import { readBack } from "../src/sample/read-back";
import { fullSheet } from "../src/sample/sample-sheet";
import { chromiumPrint } from "./chromium-peer";
import { drawWithPdfkit } from "./pdfkit-peer";

export interface SheetsBenchRow {
  readonly group: "sheets";
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** The same content by another program, in the same run. */
  readonly peer?: { readonly name: string; readonly value: number };
  /** Peer over ours. */
  readonly ratio?: number;
}

const paper = "A4" as const;
const warmUps = 30;
const samples = 41;
const eventSize = 200;
const manyCars = 2_000;
/** Peers are measured on fewer cars and scaled, or the bench would take minutes. */
const peerCars = 40;

/** Modified cars by the starter rules, as the demo's are: one warm, a whole event of each kind, ten of them. */
export async function sheetsBench(): Promise<SheetsBenchRow[]> {
  const one = [fullSheet(1)];
  for (let run = 0; run < warmUps; run++) await drawSheets(one, { paper });
  const warm = await median(() => drawSheets(one, { paper }), samples);
  const read = await readBack(await drawSheets(one, { paper }));
  const kitOne = await median(() => drawWithPdfkit(read, 1), 5);
  const kit = (await median(() => drawWithPdfkit(read, peerCars), 1)) * (eventSize / peerCars);
  const event = Array.from({ length: eventSize }, (_, at) => fullSheet(at + 1));
  const plain = await median(() => drawSheets(event, { paper }), 5);
  const browser = chromiumPrint(event.slice(0, peerCars));
  const held = await longestHold(() => drawSheetsAside(event, { paper, kind: "tagged" }));
  const alone = (kind: SheetKind, cars = eventSize) => drawnAlone(kind, cars);
  const [plainAlone, form, tagged] = [alone("plain"), alone("fillable"), alone("tagged")];
  const many = alone("plain", manyCars);
  const cars = `${eventSize} cars`;
  return [
    row("one sheet, 8 deviations, 102 checks, warm", warm, "ms", { name: "pdfkit", value: kitOne }),
    row(`${cars} in one file`, plain / 1000, "s", { name: "pdfkit", value: kit / 1000 }),
    ...(browser === undefined
      ? []
      : [
          row(`${cars} in one file, against a browser's print`, plain / 1000, "s", {
            name: "Chromium",
            value: (browser * (eventSize / peerCars)) / 1000,
          }),
        ]),
    row(`${cars}, processor time`, plainAlone.cpu / 1000, "s"),
    row(`${cars} to fill in`, form.wall / 1000, "s"),
    row(`${cars} to fill in, processor time`, form.cpu / 1000, "s"),
    row(`${cars} tagged and to fill in`, tagged.wall / 1000, "s"),
    row(`${cars} tagged and to fill in, processor time`, tagged.cpu / 1000, "s"),
    row(
      `${manyCars} cars over ${eventSize}, processor time a car`,
      perCar(many.cpu) / (plainAlone.cpu / eventSize),
      "×",
    ),
    row("longest hold of the event loop while a thread draws", held, "ms"),
    row(`peak memory of a process that draws ${cars}`, plainAlone.peakMb, "MB"),
    row(`peak memory of a process that draws ${cars} to fill in`, form.peakMb, "MB"),
    row(`peak memory of a process that draws ${cars} tagged`, tagged.peakMb, "MB"),
    row(`peak memory of a process that draws ${manyCars} cars`, many.peakMb, "MB"),
    row(`size of ${cars}`, plainAlone.kilobytes, "kB"),
    row(`size of ${cars} tagged and to fill in`, tagged.kilobytes, "kB"),
  ];
}

const perCar = (cpu: number) => cpu / manyCars;

interface Alone {
  readonly wall: number;
  readonly cpu: number;
  readonly peakMb: number;
  readonly kilobytes: number;
}

/** Drawn by a process of its own: its first file, with nothing of this bench in its memory. */
function drawnAlone(kind: SheetKind, cars: number): Alone {
  const program = fileURLToPath(new URL("./alone.mts", import.meta.url));
  const told = execFileSync(process.execPath, ["--import", "tsx", program, kind, String(cars)], {
    encoding: "utf8",
    maxBuffer: 1_000_000,
  });
  return JSON.parse(told) as Alone;
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

function row(
  name: string,
  value: number,
  unit: string,
  peer?: { name: string; value: number },
): SheetsBenchRow {
  const round = (number: number) => Math.round(number * 1000) / 1000;
  const base = { group: "sheets", name, value: round(value), unit } as const;
  if (peer === undefined) return base;
  return { ...base, peer: { ...peer, value: round(peer.value) }, ratio: round(peer.value / value) };
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
