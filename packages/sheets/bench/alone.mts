// One file drawn in a process of its own, so that its memory is its own: alone.mts <kind> <cars>
import { drawSheets, sheetKinds } from "../src/index";
import { fullSheet } from "../src/sample/sample-sheet";

const kind = sheetKinds.find((one) => one === process.argv[2]) ?? "plain";
const cars = Number(process.argv[3] ?? 200);
await drawSheets([fullSheet(1)], { paper: "A4", kind });
const models = Array.from({ length: cars }, (_, at) => fullSheet(at + 1));
const before = process.cpuUsage();
const start = performance.now();
const bytes = await drawSheets(models, { paper: "A4", kind });
const wall = performance.now() - start;
const { user, system } = process.cpuUsage(before);
const told = {
  wall,
  cpu: (user + system) / 1000,
  peakMb: process.resourceUsage().maxRSS / 1024,
  kilobytes: bytes.length / 1000,
};
process.stdout.write(`${JSON.stringify(told)}\n`);
