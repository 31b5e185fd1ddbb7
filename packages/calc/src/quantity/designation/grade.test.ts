import { describe, expect, test } from "vitest";
import { NotationError } from "../notation-error";
import { gradeStrength, parseGrade, printGrade } from "./grade";

const ksi = 6_894_757.293168361;
const inch = 0.0254;

describe("the class is read however it is written", () => {
  test.each([
    ["8.8", "class 8.8"],
    ["8,8", "class 8.8"],
    ["class 10.9", "class 10.9"],
    ["Cl. 12.9", "class 12.9"],
    ["cl 4.6", "class 4.6"],
    ["grade 8.8", "class 8.8"],
    ["ISO 8.8", "class 8.8"],
    ["ISO 898-1 class 8.8", "class 8.8"],
    ["grade 8", "grade 8"],
    ["Gr. 5", "grade 5"],
    ["gr 2", "grade 2"],
    ["SAE 8", "grade 8"],
    ["SAE grade 5", "grade 5"],
    ["SAE J429 grade 2", "grade 2"],
    ["sae j429 8", "grade 8"],
  ])("%s is %s", (entered, canonical) => {
    const grade = parseGrade(entered);
    expect(grade.canonical).toBe(canonical);
    expect(grade.system).toBe(canonical.startsWith("class") ? "ISO 898-1" : "SAE J429");
    expect(parseGrade(printGrade(grade))).toEqual(grade);
  });

  test.each([
    [
      "8",
      `"8": a figure alone names no strength class; understood would be class 8.8 or class 10.9 or grade 5 or grade 8`,
    ],
    [
      "7.7",
      `"7.7": this is no strength class that is known (4.6, 4.8, 5.6, 5.8, 6.8, 8.8, 9.8, 10.9, 12.9 of ISO 898-1; grades 2, 5, 8 of SAE J429); understood would be class 8.8 or class 10.9 or grade 5 or grade 8`,
    ],
    [
      "grade 3",
      `"grade 3": this is no strength class that is known (4.6, 4.8, 5.6, 5.8, 6.8, 8.8, 9.8, 10.9, 12.9 of ISO 898-1; grades 2, 5, 8 of SAE J429); understood would be class 8.8 or class 10.9 or grade 5 or grade 8`,
    ],
    [
      "class 8",
      `"class 8": this is no strength class that is known (4.6, 4.8, 5.6, 5.8, 6.8, 8.8, 9.8, 10.9, 12.9 of ISO 898-1; grades 2, 5, 8 of SAE J429); understood would be class 8.8 or class 10.9 or grade 5 or grade 8`,
    ],
    [" ", `" ": nothing is entered; understood would be class 8.8 or class 10.9 or grade 5 or grade 8`],
  ])("%s is refused", (entered, message) => {
    expect(() => parseGrade(entered)).toThrow(NotationError);
    expect(() => parseGrade(entered)).toThrow(expect.objectContaining({ message, entered }));
  });
});

describe("ISO 898-1:2013, table 3: least Rm, yield, proof stress in MPa (read, as a fastener table reproduces it)", () => {
  test.each([
    ["4.6", 8, 400, 240, 225],
    ["4.8", 8, 420, 340, 310],
    ["5.6", 8, 500, 300, 280],
    ["5.8", 8, 520, 420, 380],
    ["6.8", 8, 600, 480, 440],
    ["8.8", 8, 800, 640, 580],
    ["8.8", 16, 800, 640, 580],
    ["8.8", 18, 830, 660, 600], // FAS-45
    ["8.8", 39, 830, 660, 600],
    ["9.8", 16, 900, 720, 650],
    ["10.9", 20, 1040, 940, 830], // FAS-45
    ["12.9", 12, 1220, 1100, 970], // FAS-45
  ])("class %s at %d mm", (name, diameter, tensile, yieldStress, proof) => {
    const strength = gradeStrength(parseGrade(name), diameter / 1000);
    expect(strength).toEqual({ tensile: tensile * 1e6, yield: yieldStress * 1e6, proof: proof * 1e6 });
  });
});

describe("SAE J429: tensile, yield, proof in ksi (read: university table after Shigley & Mischke, 5th ed., p. 341)", () => {
  test.each([
    ["2", 0.25, 74, 57, 55],
    ["2", 0.75, 74, 57, 55],
    ["2", 0.875, 60, 36, 33],
    ["5", 0.25, 120, 92, 85], // FAS-43
    ["5", 1, 120, 92, 85], // FAS-43
    ["5", 1.125, 105, 81, 74],
    ["5", 1.5, 105, 81, 74],
    ["8", 0.25, 150, 130, 120], // FAS-44
    ["8", 1.5, 150, 130, 120], // FAS-44
  ])("grade %s at %d in", (name, diameter, tensile, yieldStress, proof) => {
    const strength = gradeStrength(parseGrade(`grade ${name}`), diameter * inch);
    expect(strength.tensile / ksi).toBeCloseTo(tensile, 9);
    expect(strength.yield / ksi).toBeCloseTo(yieldStress, 9);
    expect(strength.proof / ksi).toBeCloseTo(proof, 9);
  });
});

test.each([
  ["8.8", 0.0015, "ISO 898-1 gives 8.8 for 1.6 to 39 mm of thread diameter, not for 1.5 mm"],
  ["8.8", 0.042, "ISO 898-1 gives 8.8 for 1.6 to 39 mm of thread diameter, not for 42 mm"],
  ["9.8", 0.018, "ISO 898-1 gives 9.8 for 1.6 to 16 mm of thread diameter, not for 18 mm"],
  ["grade 5", 0.004826, "SAE J429 gives 5 for 0.25 to 1.5 in of thread diameter, not for 0.19 in"],
  ["grade 8", 0.0508, "SAE J429 gives 8 for 0.25 to 1.5 in of thread diameter, not for 2 in"],
  ["grade 8", Number.NaN, "SAE J429 gives 8 for 0.25 to 1.5 in of thread diameter, not for NaN in"],
])("%s is refused at %d m, outside its standard", (name, diameter, message) => {
  expect(() => gradeStrength(parseGrade(name), diameter)).toThrow(new RangeError(message));
});
