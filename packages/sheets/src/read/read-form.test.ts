import { PDFDocument } from "pdf-lib";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, test } from "vitest";
import { drawSheets } from "../draw-sheets";
import { plainSheet, sampleSheet } from "../sample/sample-sheet";
import { readSheetForm } from "./read-form";

const kinds = ["fillable", "tagged"] as const;

async function filledByPdfLib(kind: "fillable" | "tagged"): Promise<Uint8Array> {
  const bytes = await drawSheets([sampleSheet(), plainSheet(7)], { paper: "A4", kind });
  const document = await PDFDocument.load(bytes);
  const form = document.getForm();
  form.getRadioGroup("no-42.check/rod-end/result").select("refuse");
  form.getTextField("no-42.check/rod-end/reading/whole").setText("5 mm");
  form.getTextField("no-42.remark/1/check").setText("4");
  form.getTextField("no-42.remark/1/text").setText("lock nut loose");
  form.getTextField("no-42.setting/front-camber/left").setText("-1°10'");
  form.getRadioGroup("no-7.decision").select("pass-with-advice");
  return document.save();
}

/** Filled by another program than wrote it: pdf.js, as a browser's viewer does. */
async function filledByPdfJs(kind: "fillable" | "tagged"): Promise<Uint8Array> {
  const data = await drawSheets([sampleSheet()], { paper: "A4", kind });
  const document = await getDocument({ data: data.slice(), verbosity: 0 }).promise;
  const objects = (await document.getFieldObjects()) as Record<
    string,
    { id: string; exportValues?: string }[]
  > | null;
  const box = objects?.["no-42.check/disc/result"]?.find(({ exportValues }) => exportValues === "advise");
  const note = objects?.["no-42.remark/1/text"]?.[0];
  if (!box || !note) throw new Error("the form lost its fields");
  document.annotationStorage.setValue(box.id, { value: true });
  document.annotationStorage.setValue(note.id, { value: "hair crack, Þórdís saw it" });
  return document.saveDocument();
}

describe.each(kinds)("a %s sheet", (kind) => {
  test("filled in by one library is read back, field for field", async () => {
    expect(await readSheetForm(await filledByPdfLib(kind))).toEqual({
      kind: "sheets",
      sheets: [
        {
          code: "7K2M9QXT",
          record: sampleSheet().recordHash,
          fields: {
            "check/rod-end/result": "refuse",
            "check/rod-end/reading/whole": "5 mm",
            "remark/1/check": "4",
            "remark/1/text": "lock nut loose",
            "setting/front-camber/left": "-1°10'",
          },
        },
        { code: "7K2M9QXT", record: plainSheet(7).recordHash, fields: { decision: "pass-with-advice" } },
      ],
    });
  });

  test("filled in by a viewer's engine is read back", async () => {
    const read = await readSheetForm(await filledByPdfJs(kind));
    expect(read).toMatchObject({
      sheets: [{ fields: { "check/disc/result": "advise", "remark/1/text": "hair crack, Þórdís saw it" } }],
    });
  });

  test("as printed has nothing filled in", async () => {
    const read = await readSheetForm(await drawSheets([sampleSheet()], { paper: "Letter", kind }));
    expect(read).toMatchObject({ kind: "sheets", sheets: [{ fields: {} }] });
  });

  test("cut off anywhere is damaged, never half a sheet", async () => {
    const whole = await filledByPdfLib(kind);
    for (const part of [0.1, 0.5, 0.9, 0.999]) {
      const cut = whole.subarray(0, Math.floor(whole.length * part) - 8);
      expect(await readSheetForm(cut), `cut at ${part}`).toEqual({ kind: "damaged" });
    }
  });
});

describe("what is no sheet", () => {
  test("a plain sheet and a stranger's PDF have no fields of ours", async () => {
    expect(await readSheetForm(await drawSheets([sampleSheet()], { paper: "A4" }))).toEqual({
      kind: "foreign",
    });
    const strange = await PDFDocument.create();
    strange.addPage();
    strange.getForm().createTextField("name").setText("Åse");
    expect(await readSheetForm(await strange.save())).toEqual({ kind: "foreign" });
  });

  test("an encrypted file is told apart from a damaged one", async () => {
    const bytes = await drawSheets([sampleSheet()], { paper: "A4", kind: "fillable" });
    const document = await PDFDocument.load(bytes);
    document.context.trailerInfo.Encrypt = document.context.register(
      document.context.obj({ Filter: "Standard", V: 1, R: 2 }),
    );
    expect(await readSheetForm(await document.save())).toEqual({ kind: "encrypted" });
  });

  test.each([
    ["nothing", new Uint8Array()],
    ["a picture", new Uint8Array([0xff, 0xd8, 0xff, 0xe0])],
    ["words", Buffer.from("%PDF-1.7 but nothing else %%EOF")],
  ])("%s is damaged", async (_, bytes) => {
    expect((await readSheetForm(bytes)).kind).toMatch(/damaged|foreign/);
  });
});
