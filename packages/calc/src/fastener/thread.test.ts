import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { atMost } from "../property-runs.fixture";
import { parseThread } from "../quantity/designation/thread";
import { engagementNeeded, pitchLineArea, stripAreas } from "./engagement";
import { boltLoads, shearCapacity } from "./strength";
import { nutMinorDiameter, pitchDiameter, rootDiameter, stressArea, stressDiameter } from "./thread-form";
import { ordinaryFit } from "./thread-limit";
import { standardThreads } from "./thread-list";
import { candidateLimit, lookAlikes, threadPair } from "./thread-pair";

const threads = fc.constantFrom(...standardThreads());
const strong = { tensile: 1040e6, yield: 940e6, proof: 830e6 };

describe("thread sizes", () => {
  test("there are over 200 standard threads, each once", () => {
    const names = standardThreads().map(({ canonical }) => canonical);
    expect(new Set(names).size).toBe(names.length);
    expect(names.length).toBeGreaterThan(200);
  });

  test("root < stress < pitch < nominal diameter, and the nut's hole lies between root and pitch", () => {
    fc.assert(
      fc.property(threads, (thread) => {
        const root = rootDiameter(thread);
        expect(root).toBeLessThan(stressDiameter(thread));
        expect(stressDiameter(thread)).toBeLessThan(pitchDiameter(thread));
        expect(pitchDiameter(thread)).toBeLessThan(thread.majorDiameter);
        expect(nutMinorDiameter(thread)).toBeGreaterThanOrEqual(root);
        expect(nutMinorDiameter(thread)).toBeLessThan(pitchDiameter(thread));
      }),
    );
  });

  test("a finer pitch on the same diameter leaves more stress area; twice the size has four times the area", () => {
    fc.assert(
      fc.property(threads, fc.double({ min: 0.3, max: 0.99, noNaN: true }), (thread, finer) => {
        expect(stressArea({ ...thread, pitch: thread.pitch * finer })).toBeGreaterThan(stressArea(thread));
        const twice = { ...thread, majorDiameter: 2 * thread.majorDiameter, pitch: 2 * thread.pitch };
        expect(stressArea(twice) / stressArea(thread)).toBeCloseTo(4, 9);
      }),
    );
  });

  test("the ordinary fit leaves play, but never so much that the threads part", () => {
    for (const thread of standardThreads()) {
      const fit = ordinaryFit(thread);
      if (fit === undefined) {
        expect(["whitworth", "BA"]).toContain(thread.system);
        continue;
      }
      expect(fit.boltPitchLeast, thread.canonical).toBeLessThan(pitchDiameter(thread));
      expect(fit.nutPitchGreatest).toBeGreaterThan(pitchDiameter(thread));
      expect(fit.nutMinorGreatest).toBeGreaterThan(nutMinorDiameter(thread));
      expect(fit.nutMinorGreatest).toBeLessThan(fit.boltMajorLeast);
    }
  });

  test("a thread that is all pitch, and sizes that are none, are refused", () => {
    expect(() => stressArea({ system: "metric", majorDiameter: 0.002, pitch: 0.002 })).toThrow(
      /leaves nothing/,
    );
    expect(() => stressArea({ system: "metric", majorDiameter: Number.NaN, pitch: 0.001 })).toThrow(
      /majorDiameter/,
    );
    expect(() => stressArea({ system: "metric", majorDiameter: 0.01, pitch: 0 })).toThrow(/pitch/);
  });
});

describe("strength", () => {
  test("a plain shank carries more shear than the thread, two planes twice of one, break more than yield", () => {
    fc.assert(
      fc.property(threads, (thread) => {
        const shank = (Math.PI * thread.majorDiameter ** 2) / 4;
        const [inShank, inThread] = [shearCapacity(shank, strong), shearCapacity(stressArea(thread), strong)];
        expect(inShank.ultimate).toBeGreaterThan(inThread.ultimate);
        expect(inShank.ultimate).toBeGreaterThan(inShank.yield);
        expect(shearCapacity(shank, strong, 2).yield / inShank.yield).toBeCloseTo(2, 12);
      }),
    );
  });

  test("proof < yield < breaking load", () => {
    const { proof, yield: atYield, tensile } = boltLoads(parseThread("M10"), strong);
    expect([proof, atYield, tensile]).toEqual([proof, atYield, tensile].sort((a, b) => a - b));
    expect(() => boltLoads(parseThread("M10"), { ...strong, proof: Number.NaN })).toThrow(/strength.proof/);
    expect(() => shearCapacity(1e-4, strong, 1.5)).toThrow(/planes/);
  });
});

describe("engagement", () => {
  test("a weaker material needs more, in proportion; a stronger bolt in the same material too", () => {
    fc.assert(
      fc.property(threads, fc.double({ min: 0.1, max: 0.9, noNaN: true }), (thread, weaker) => {
        const alike = engagementNeeded(thread, 800e6, 800e6);
        const weak = engagementNeeded(thread, 800e6, 800e6 * weaker);
        expect(weak.againstTapped * weaker).toBeCloseTo(alike.againstTapped, 12);
        expect(weak.againstBolt).toBeCloseTo(alike.againstBolt, 12);
        expect(weak.needed).toBeGreaterThanOrEqual(alike.needed);
        expect(engagementNeeded(thread, 1000e6, 400e6).needed).toBeGreaterThan(
          engagementNeeded(thread, 800e6, 400e6).needed,
        );
      }),
    );
  });

  test("between like strengths the bolt's thread strips first and some 0.6 to 1 d is enough (rule of thumb: 1 d in steel)", () => {
    for (const thread of standardThreads().filter(({ majorDiameter }) => majorDiameter >= 0.005)) {
      const { needed, againstBolt } = engagementNeeded(thread, 800e6, 800e6);
      expect(needed, thread.canonical).toBe(againstBolt);
      expect(needed / thread.majorDiameter, thread.canonical).toBeGreaterThan(0.6);
      expect(needed / thread.majorDiameter, thread.canonical).toBeLessThan(1.01);
    }
  });

  test("where the fit is not known the pitch line is taken, and named", () => {
    const whitworth = parseThread("3/8 BSF");
    expect(stripAreas(whitworth)).toMatchObject({ basis: "pitch line", bolt: pitchLineArea(whitworth) });
    expect(stripAreas(parseThread("M10")).basis).toBe("6g/6H");
    expect(stripAreas(parseThread("3/8 UNF")).basis).toBe("2A/2B");
  });

  test("the tapped thread is sheared further out than the bolt's, so it has more area", () => {
    for (const name of ["M6", "M10x1.25", "3/8 UNC", "1/2 UNF"]) {
      const { bolt, tapped } = stripAreas(parseThread(name));
      expect(tapped, name).toBeGreaterThan(bolt);
    }
  });
});

describe("thread pairs", () => {
  test("every thread goes with itself and with no other right-hand thread", () => {
    fc.assert(
      fc.property(threads, threads, (bolt, nut) => {
        const { verdict } = threadPair(bolt, nut);
        const same =
          bolt.system === nut.system && bolt.majorDiameter === nut.majorDiameter && bolt.pitch === nut.pitch;
        expect(verdict === "match", `${bolt.canonical} in ${nut.canonical}`).toBe(same);
      }),
      atMost(3000),
    );
    for (const thread of standardThreads()) expect(threadPair(thread, thread).verdict).toBe("match");
  });

  test("a left-hand thread does not start in a right-hand one of its size", () => {
    expect(threadPair(parseThread("M10 LH"), parseThread("M10")).verdict).toBe("doesNotStart");
    expect(threadPair(parseThread("M10 LH"), parseThread("M10 LH")).verdict).toBe("match");
  });

  test.each([
    ["5/16 UNC", "3/8 UNC", "passesThrough", "the threads overlap by 8 %"],
    ["M6", "M10", "passesThrough", "much too thin"],
    ["M10", "M8", "doesNotStart", "much too thick"],
    ["M10x1", "M10x1.5", "doesNotStart", "another pitch altogether"],
    ["0 BA", "M6", "neverMix", "6 mm and 1 mm both, but flanks of 47½° against 60°"],
    ["1/4 BSF", "1/4 UNF", "neverMix", "26 and 28 to the inch"],
    ["M8x1", "5/16-24 UNF", "neverMix", "0.06 mm thicker than its nut, and starts all the same"],
    ["1/4-28 UNF", "M6", "doesNotStart", "the other way round it does"],
  ])("%s in %s: %s (%s)", (bolt, nut, expected) => {
    expect(threadPair(parseThread(bolt), parseThread(nut)).verdict).toBe(expected);
  });

  test("differences change sign when bolt and nut change places", () => {
    fc.assert(
      fc.property(threads, threads, (one, other) => {
        const [there, back] = [threadPair(one, other), threadPair(other, one)];
        expect(there.pitchDifference).toBeCloseTo(-back.pitchDifference, 15);
        expect(there.diameterDifference).toBeCloseTo(-back.diameterDifference, 15);
        expect(there.flankDifference).toBeCloseTo(-back.flankDifference, 15);
      }),
    );
  });

  test("look-alikes are mutual, leave out the thread itself, and put the most deceptive first", () => {
    const all = standardThreads();
    for (const name of ["3/8-24 UNF", "M12x1.25", "1/4-20 UNC", "2 BA", "M8"]) {
      const thread = parseThread(name);
      const found = lookAlikes(thread, all);
      const names = found.map(({ thread: each }) => each.canonical);
      expect(names, name).not.toContain(thread.canonical);
      for (const { thread: other } of found)
        expect(lookAlikes(other, [thread]), `${other.canonical} and ${name}`).toHaveLength(1);
    }
    const namesOf = (name: string) =>
      lookAlikes(parseThread(name), all).map(({ thread }) => thread.canonical);
    expect(namesOf("1/4-20 UNC")[0]).toBe("1/4-20 BSW");
    expect(namesOf("3/8-24 UNF")[0]).toBe("M10x1");
    expect(namesOf("M12x1.25")).toContain("1/2-20 UNF");
  });

  test("a search has a limit", () => {
    const many = new Array(candidateLimit + 1).fill(parseThread("M8"));
    expect(() => lookAlikes(parseThread("M8"), many)).toThrow(/at most 2000 candidates, not 2001/);
  });
});
