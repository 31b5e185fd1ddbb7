import { z } from "zod";
import { defineComputation, type WorkingStep } from "../catalogue/computation";
import type { Thread } from "../quantity/designation/thread";
import { worked } from "../spring/worked";
import { threadField } from "./field";
import { boltCaution, threadBasics, threadFits, workshop } from "./source";
import { nutMinorDiameter } from "./thread-form";
import { standardThreads } from "./thread-list";
import { lookAlikes, type PairVerdict, type ThreadPair, threadPair } from "./thread-pair";

const words: Readonly<Record<PairVerdict, string>> = {
  match: "goes together",
  neverMix: "never mix: it starts, and does not hold",
  doesNotStart: "does not start",
  passesThrough: "passes through without holding",
};
const source = [threadBasics, threadFits, workshop] as const;
const validity =
  "Basic sizes and the loosest ordinary fit. Worn, damaged or odd threads may start in others than these. Only “goes together” may be used.";

const pairInput = z.object({ bolt: threadField("Bolt"), nut: threadField("Nut or tapped hole") });

export const threadPairComputation = defineComputation({
  name: "fastener.threadPair",
  title: "One thread in another",
  summary:
    "Whether a bolt belongs in a nut, and if not, how far it would go in and how little it would hold.",
  input: pairInput,
  outputs: {
    verdict: { how: ["verdict", "starts by ΔP, ΔD and Δα; holds by ξ"], label: "Verdict", dimension: "text" },
    diameterDifference: {
      how: ["ΔD", "D − d"],
      label: "Nut less bolt, diameter",
      dimension: "length",
      unit: "mm",
    },
    pitchDifference: { label: "Nut less bolt, pitch", dimension: "length", unit: "mm" },
    overlapShare: { label: "Depth of thread engaged", dimension: "ratio", unit: "%" },
    turns: {
      how: ["n", "turns before the flanks bind, above"],
      label: "Turns before it binds",
      dimension: "ratio",
    },
    reverse: {
      how: ["reverse", "the same with bolt and nut changed over"],
      label: "The other way round",
      dimension: "text",
    },
  },
  source,
  validity,
  caution: boltCaution,
  example: { bolt: "M12x1.25", nut: "1/2-20 UNF" },
  compute({ bolt, nut }) {
    const pair = threadPair(bolt, nut);
    const working = () => pairSteps(bolt, nut, pair);
    const outputs = {
      verdict: words[pair.verdict],
      diameterDifference: pair.diameterDifference,
      pitchDifference: pair.pitchDifference,
      overlapShare: Math.max(0, pair.overlapShare),
      turns: Number.isFinite(pair.turns) ? pair.turns : null,
      reverse: words[threadPair(nut, bolt).verdict],
    };
    return { outputs, working, warnings: warningsOf(bolt, nut, pair) };
  },
});

function pairSteps(bolt: Thread, nut: Thread, pair: ThreadPair): WorkingStep[] {
  return [
    { symbol: "bolt", label: "Bolt", value: bolt.canonical },
    { symbol: "nut", label: "Nut", value: nut.canonical },
    ...worked([
      ["d", "Bolt, diameter", bolt.series, bolt.majorDiameter, "length", "mm"],
      ["D", "Nut, diameter", nut.series, nut.majorDiameter, "length", "mm"],
      ["D₁", "Hole of the nut", "D − 1.082532·P for 60°", nutMinorDiameter(nut), "length", "mm"],
      ["ΔP", "Pitch of nut less bolt", "P_n − P_b", pair.pitchDifference, "length", "mm"],
      ["x", "Radial overlap", "(d − D₁)/2", pair.overlap, "length", "mm"],
      ["ξ", "Overlap over the nut's own", "x/((D − D₁)/2)", pair.overlapShare, "ratio", "%"],
      ["Δα", "Flank angle, nut less bolt", "given by the systems", pair.flankDifference, "angle", "°"],
    ]),
    {
      symbol: "n",
      label: "Turns before the flanks bind",
      formula: "(D₂ − d₂)·tan α/|ΔP| at the loosest fit",
      value: Number.isFinite(pair.turns)
        ? Number(pair.turns.toFixed(1))
        : "the pitches agree: it never binds",
    },
  ];
}

function warningsOf(bolt: Thread, nut: Thread, pair: ThreadPair): string[] {
  if (pair.verdict === "match") return [];
  const pairText = `${bolt.canonical} in ${nut.canonical}`;
  if (pair.verdict === "neverMix") {
    const turns = Math.max(1, Math.floor(pair.turns));
    const far =
      pair.turns >= 6
        ? "screws on as if it belonged"
        : `goes in about ${turns === 1 ? "1 turn" : `${turns} turns`}, further with a spanner`;
    return [`${pairText} ${far}. Never mix them; sort and mark them apart.`];
  }
  return [`${pairText} does not belong together.`];
}

const listInput = z.object({ thread: threadField() });

export const lookAlikeComputation = defineComputation({
  name: "fastener.lookAlike",
  title: "Threads that must never be mixed with this one",
  summary: "Which standard threads start in a thread, or let it start in them, without belonging to it.",
  input: listInput,
  outputs: {
    count: {
      how: ["n", "threads named above"],
      label: "Look-alikes",
      dimension: "count",
      decimals: 0,
    },
    worst: {
      how: ["worst", "the first of them"],
      label: "The most deceptive",
      dimension: "text",
    },
    list: {
      how: ["list", "the most deceptive first, by ΔP and ΔD"],
      label: "All, the most deceptive first",
      dimension: "text",
    },
  },
  source,
  validity,
  caution: boltCaution,
  example: { thread: "3/8-24 UNF" },
  compute({ thread }) {
    const found = lookAlikes(thread, standardThreads());
    const working: WorkingStep[] = found.map(({ thread: other, asBolt, asNut }) => ({
      symbol: other.canonical,
      label: `${other.canonical} as nut: ${words[asBolt.verdict]}; as bolt: ${words[asNut.verdict]}`,
      formula: "|ΔP|, ΔD of basic sizes",
      value: `pitch ${difference(asBolt.pitchDifference)}, diameter ${difference(asBolt.diameterDifference)}`,
    }));
    const names = found.map(({ thread: other }) => other.canonical);
    const outputs = { count: found.length, worst: names[0] ?? "none", list: names.join(", ") || "none" };
    const head: WorkingStep = { symbol: "thread", label: "Thread", value: thread.canonical };
    return { outputs, working: () => [head, ...working], warnings: [] };
  },
});

const difference = (metres: number): string =>
  `${metres >= 0 ? "+" : "−"}${Math.abs(metres * 1000).toFixed(3)} mm`;
