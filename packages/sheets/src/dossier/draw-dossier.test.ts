import type { DossierModel } from "@trunnion/register";
import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, test } from "vitest";
import { outside, overlaps, readBack } from "../sample/read-back";
import { DOSSIER_PICTURES, drawDossier } from "./draw-dossier";

/** A picture of 8 × 6 pixels, made for this test. */
const tinyJpeg =
  "/9j/2wBDABALDA4MChAODQ4SERATGCgaGBYWGDEjJR0oOjM9PDkzODdASFxOQERXRTc4UG1RV19iZ2hnPk1xeXBkeFxlZ2P/2wBDARESEhgVGC8aGi9jQjhCY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2NjY2P/wAARCAAGAAgDASIAAhEBAxEB/8QAFQABAQAAAAAAAAAAAAAAAAAAAAX/xAAUEAEAAAAAAAAAAAAAAAAAAAAA/8QAFQEBAQAAAAAAAAAAAAAAAAAABAX/xAAUEQEAAAAAAAAAAAAAAAAAAAAA/9oADAMBAAIRAxEAPwCSAEov/9k=";
const picture = { jpeg: Buffer.from(tinyJpeg, "base64"), width: 8, height: 6 };

const row = {
  label: "Front camber, left",
  actual: "−1°15′ ± 6′",
  specified: "−0°12′ to +0°30′",
  difference: "−1°24′",
  verdict: "outsideLimits",
  verdictText: "outside limits",
  known: "seen at the spring check, documented",
} as const;

function dossier(changes: Partial<DossierModel> = {}): DossierModel {
  return {
    layoutVersion: 1,
    recordHash: "0123456789abcdef".repeat(4),
    recordVersion: 7,
    preparedAt: "2026-11-25T18:30:00Z",
    club: "Sandvær Register",
    car: { chassis: "S2-0211", marque: "Sandvær", series: "Series 2", claim: "claim 1 of 2 to this number" },
    on: "25 November 2026",
    facts: [
      { label: "Built", value: "c. 1971" },
      { label: "Engine number", value: "SV 20417" },
      { label: "Status", value: "" },
    ],
    deviations: [row],
    history: [
      {
        on: "before March 1972",
        title: "Modified",
        text: "Thicker bar after the works' own bulletin",
        changes: ["Front anti-roll bar diameter: 9/16 in → 5/8 in"],
        known: "letter of the second keeper, stated",
      },
    ],
    assemblies: [{ label: "Settings", rows: [row], notRecorded: ["Rear toe", "Castor"] }],
    evidence: [
      { id: "a", caption: "Chassis plate", taken: "1998", supports: ["Chassis number"], pictured: true },
      { id: "b", caption: "Works' build sheet", taken: "", supports: ["Engine number"], pictured: false },
    ],
    cautions: ["This record is an aid. It certifies no roadworthiness."],
    ...changes,
  };
}

async function drawn(model: DossierModel, paper: "A4" | "Letter" = "A4") {
  const read = await readBack(await drawDossier(model, { paper, pictures: new Map([["a", picture]]) }));
  for (const page of read.pages) {
    expect(overlaps(page)).toEqual([]);
    expect(outside(page)).toEqual([]);
  }
  return read;
}

const squeezed = (text: string) => text.replaceAll(/\s/g, "");

describe("a dossier", () => {
  test.each(["A4", "Letter"] as const)(
    "says everything of its model on %s, to a reader that did not draw it",
    async (paper) => {
      const { text, title, language } = await drawn(dossier(), paper);
      for (const part of [
        "S2-0211",
        "claim 1 of 2 to this number",
        "c. 1971",
        "not recorded",
        "9/16 in → 5/8 in",
        "letter of the second keeper, stated",
        "Rear toe, Castor",
        "seen at the spring check",
        "Works' build sheet",
        "no picture of it",
        "certifies no roadworthiness",
        "version 7",
      ]) {
        expect(squeezed(text)).toContain(squeezed(part));
      }
      expect(title).toBe("Dossier of S2-0211, Sandvær Series 2");
      expect(language).toBe("en-GB");
    },
  );

  test("shows no keeper unless the model has them", async () => {
    expect((await drawn(dossier())).text).not.toContain("Keeper");
    const { text } = await drawn(dossier({ keepers: [{ name: "Tõnu Bråtvær", span: "from 1984" }] }));
    expect(text).toContain("Tõnu Bråtvær, from 1984");
  });

  test("draws the pictures it was given, once each", async () => {
    const bytes = await drawDossier(dossier(), { paper: "A4", pictures: new Map([["a", picture]]) });
    const file = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
    const last = await file.getPage(file.numPages);
    const { fnArray } = await last.getOperatorList();
    expect(fnArray.filter((operator) => operator === OPS.paintImageXObject)).toHaveLength(1);
    await file.destroy();
  });

  test("is the same bytes for the same model", async () => {
    const draw = () => drawDossier(dossier(), { paper: "A4", pictures: new Map([["a", picture]]) });
    expect(Buffer.from(await draw()).equals(Buffer.from(await draw()))).toBe(true);
  });

  test("of a car with 200 modifications runs over many pages, each saying whose it is", async () => {
    const [event] = dossier().history;
    const history = Array.from({ length: 200 }, () => event as NonNullable<typeof event>);
    const { pages } = await drawn(dossier({ history }));
    expect(pages.length).toBeGreaterThan(5);
    for (const [at, { text }] of pages.entries()) {
      expect(text).toContain("S2-0211");
      expect(text).toContain(`page ${at + 1} of ${pages.length}`);
    }
  });

  test("replaces visibly what its typeface has no shape for, and says so", async () => {
    const { text } = await drawn(dossier({ facts: [{ label: "Remarks", value: "مرحبا 🚗" }] }));
    expect(text).toMatch(/characters of this sheet have no shape/);
  });

  test.each([
    [{ layoutVersion: 2 }, /layout 2 is not known/],
    [{ preparedAt: "yesterday" }, /must be an ISO instant/],
    [{ facts: [{ label: "a", value: "x".repeat(5_001) }] }, /5001 characters/],
  ])("refuses %j", async (changes, message) => {
    await expect(drawDossier(dossier(changes), { paper: "A4" })).rejects.toThrow(message);
  });

  test("refuses more pictures than it may hold", async () => {
    const evidence = Array.from({ length: DOSSIER_PICTURES + 1 }, (_, at) => ({
      id: `e${at}`,
      caption: "",
      taken: "",
      supports: [],
      pictured: true,
    }));
    const pictures = new Map(evidence.map(({ id }) => [id, picture]));
    await expect(drawDossier(dossier({ evidence }), { paper: "A4", pictures })).rejects.toThrow(
      /more than 200 pictures/,
    );
  });
});
