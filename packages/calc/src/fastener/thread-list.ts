import { parseThread, type Thread } from "../quantity/designation/thread";
import { largestBaNumber, metricPitches, threadsPerInch } from "../quantity/designation/thread-table";

let known: readonly Thread[] | undefined;

/** Every right-hand thread of the standards that designations are read from, once each. */
export function standardThreads(): readonly Thread[] {
  known ??= [...metricNames(), ...inchNames(), ...baNames()].map((name) => parseThread(name));
  return known;
}

function metricNames(): string[] {
  return [...metricPitches].flatMap(([diameter, { coarse, fine }]) =>
    [...(coarse === undefined ? [] : [coarse]), ...fine].map((pitch) => `M${diameter}x${pitch}`),
  );
}

function inchNames(): string[] {
  return Object.entries(threadsPerInch).flatMap(([series, sizes]) =>
    Object.keys(sizes).map((size) => `${size} ${series}`),
  );
}

function baNames(): string[] {
  return Array.from({ length: largestBaNumber + 1 }, (_, number) => `${number} BA`);
}
