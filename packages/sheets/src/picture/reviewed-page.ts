import { fileURLToPath } from "node:url";
import { drawSheets, type SheetsOptions } from "../draw-sheets";
import { fullSheet, plainSheet, sampleSheet } from "../sample/sample-sheet";

/** A page somebody has looked at: where its picture is kept, and how it is drawn anew. */
export interface ReviewedPage {
  readonly name: string;
  readonly page: number;
  readonly draw: () => Promise<Uint8Array>;
}

const blank = () => {
  const sheet = plainSheet(0);
  return {
    ...sheet,
    code: "",
    link: "",
    entry: { runningNumber: "", group: "", className: "", driver: "" },
    car: {
      chassis: "",
      marque: "",
      series: "",
      built: "",
      body: "",
      colour: "",
      registration: "",
      onRegister: false,
    },
    settings: [],
    notRecorded: 0,
  };
};

const many = () =>
  sampleSheet({
    deviations: Array.from({ length: 200 }, (_, at) => {
      const { deviations } = sampleSheet();
      const one = deviations[1 + (at % (deviations.length - 1))];
      if (one === undefined) throw new Error("the sample has no deviations");
      return { ...one, label: `Characteristic number ${at + 1}` };
    }),
  });

const drawn =
  (models: Parameters<typeof drawSheets>[0], options: Partial<SheetsOptions> = {}) =>
  () =>
    drawSheets(models, { paper: "A4", ...options });

/** Every kind of page there is, in greys. */
export const reviewedPages: readonly ReviewedPage[] = [
  { name: "modified-car-1", page: 1, draw: drawn([fullSheet(7)]) },
  { name: "modified-car-2", page: 2, draw: drawn([fullSheet(7)]) },
  { name: "modified-car-letter-1", page: 1, draw: drawn([fullSheet(7)], { paper: "Letter" }) },
  { name: "blank-1", page: 1, draw: drawn([blank()]) },
  { name: "many-modifications-1", page: 1, draw: drawn([many()]) },
  { name: "many-modifications-3", page: 3, draw: drawn([many()]) },
  { name: "overview", page: 1, draw: drawn([fullSheet(7), plainSheet(8)], { parts: ["overview"] }) },
  { name: "station", page: 2, draw: drawn([fullSheet(7), plainSheet(8)], { parts: ["stations"] }) },
];

export const reviewedFolder = fileURLToPath(new URL("../../reviewed/", import.meta.url));
