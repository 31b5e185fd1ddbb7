import { createHash } from "node:crypto";
import type { Drawn } from "./habit";

/** A source of numbers that follow from what it was made with, and from nothing else. */
export interface Draw {
  /** From 0 up to, not including, 1. */
  next(): number;
  /** Whether something comes true that does so in so many of a hundred cases. */
  chance(percent: number): boolean;
  /** A whole number, both ends included. */
  whole(least: number, most: number): number;
  pick<T>(of: readonly T[]): T;
  /** Around zero with a deviation of one, no further than three. */
  normal(): number;
}

/** Thirty-two bits stirred (the "mulberry" step, public domain): plenty for invented cars. */
function numbers(start: number): () => number {
  let state = start >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A source that follows from a text. */
export function drawFrom(text: string): Draw {
  const next = numbers(createHash("md5").update(text).digest().readUInt32LE(0));
  const normal = () => Array.from({ length: 12 }, next).reduce((sum, one) => sum + one, -6);
  return {
    next,
    chance: (percent) => next() * 100 < percent,
    whole: (least, most) => least + Math.floor(next() * (most - least + 1)),
    pick: (of) => of[Math.floor(next() * of.length)] as (typeof of)[number],
    normal: () => Math.max(-3, Math.min(3, normal())),
  };
}

const isTexts = (drawn: Drawn): drawn is readonly string[] => Array.isArray(drawn);

/** What is written on one side of one car. */
export function written(draw: Draw, drawn: Drawn): string {
  if (isTexts(drawn)) return draw.pick(drawn);
  const figure = drawn.mean + drawn.deviation * draw.normal();
  return `${figure.toFixed(drawn.digits).replace(/^-(0(\.0*)?)$/, "$1")}${drawn.unit}`;
}
