import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { quotedFileName } from "../refusal/evidence";
import { evidenceFileName, evidenceLimits, isPicture } from "./file";
import { evidenceTargetKinds, evidenceTargetReference, readEvidenceTarget } from "./target";

describe("a file name as it is kept", () => {
  test.each([
    ["IMG_0421.JPG", "IMG_0421.JPG"],
    ["scan.jpeg", "scan.jpeg"],
    ["/home/someone/pictures/front bar.jpg", "front bar.jpg"],
    ["..\\..\\windows\\bar.jpg", "bar.jpg"],
    ["page.html", "page.html.jpg"],
    // U+202E turns the direction: it would be shown as "bar exe.gpj".
    ["bar \u202Egpj.exe", "bar gpj.exe.jpg"],
    ["\u0000\u0007bar\r\n.jpg", "bar.jpg"],
    ["", "unnamed.jpg"],
    ["...", "unnamed.jpg"],
    [".jpg", "jpg.jpg"],
    ["Bråtvær – før.jpg", "Bråtvær – før.jpg"],
    ["Bra\u030Atvær.jpg", "Bråtvær.jpg"],
  ])("%j is kept as %j", (given, kept) => {
    expect(evidenceFileName(given, "image/jpeg")).toBe(kept);
  });

  test("of 4,000 characters is cut to 120, its ending kept, no character halved", () => {
    const kept = evidenceFileName(`${"🚗".repeat(4_000)}.jpg`, "image/jpeg");
    expect(kept.length).toBeLessThanOrEqual(evidenceLimits.fileName);
    expect(kept).toMatch(/^🚗+\.jpg$/u);
  });

  test("never holds a folder, a control character or a turn of direction, whatever is given", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 150 }), (given) => {
        const kept = evidenceFileName(given, "application/pdf");
        expect(kept).not.toMatch(/[/\\\p{Cc}\u200E\u200F\u202A-\u202E\u2066-\u2069]/u);
        expect(kept.length).toBeLessThanOrEqual(evidenceLimits.fileName);
        expect(kept).toMatch(/[^.]\.pdf$/i);
      }),
    );
  });
});

test("a refusal quotes a file's name on one line, cut at 60 characters", () => {
  expect(quotedFileName("a\n\u202Eb.jpg")).toBe("ab.jpg");
  expect(quotedFileName("x".repeat(4_000))).toHaveLength(60);
  expect(quotedFileName("")).toBe("the file");
});

describe("what evidence supports", () => {
  const id = "01900000-0000-7000-8000-000000000001";

  test.each(evidenceTargetKinds)("%s is named in one word and read back", (kind) => {
    expect(readEvidenceTarget(evidenceTargetReference({ kind, id }))).toEqual({ kind, id });
  });

  test.each([
    "",
    "car",
    "car:",
    "car:1",
    `cat:${id}`,
    `car:${id}:x`,
    `car:${id.toUpperCase()}x`,
    `__proto__:${id}`,
  ])("%j names nothing", (text) => {
    expect(readEvidenceTarget(text)).toBeUndefined();
  });
});

test("a document is no picture, nor is what is not taken in", () => {
  expect(isPicture("image/tiff")).toBe(true);
  expect(isPicture("application/pdf")).toBe(false);
  expect(isPicture("image/svg+xml")).toBe(false);
  expect(isPicture("constructor")).toBe(false);
});
