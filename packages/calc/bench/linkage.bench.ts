import { now } from "tinybench";
import { exampleAdjusters } from "../src/adjuster/example";
import { planAdjustment } from "../src/adjuster/index";
import { exampleLiveAxle, exampleStrut, exampleWishbone } from "../src/linkage/example";
import {
  type Corner,
  doubleWishbone,
  liveAxle,
  readCorner,
  readLiveAxle,
  strut,
  sweepBump,
} from "../src/linkage/index";
import { genericWishbone } from "./generic-solver";

/** One line of the benchmark's table. */
export interface BenchRow {
  readonly group: string;
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** The same problem through something else. */
  readonly peer?: { readonly name: string; readonly value: number };
  /** How many times as long the peer takes. */
  readonly ratio?: number;
}

const positions = 201;
const rounds = 15;

/** Positions in bump and steer together, as a driver and a road would ask for them. */
const path = Array.from({ length: positions }, (_, index) => ({
  bump: -0.08 + (0.16 * index) / (positions - 1),
  rack: 0.045 * Math.sin(index / 9),
}));

/**
 * Least time of one call in milliseconds, over rounds of `calls` calls after as many to warm up: the least, because
 * whatever else the machine does only ever adds.
 */
function milliseconds(calls: number, run: () => void): number {
  let least = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 2 * rounds; round += 1) {
    const start = now();
    for (let call = 0; call < calls; call += 1) run();
    if (round >= rounds) least = Math.min(least, (now() - start) / calls);
  }
  return least;
}

const row = (name: string, value: number, unit: string): BenchRow => ({
  group: "linkage",
  name,
  value,
  unit,
});

function walk(corner: Corner): void {
  for (const { bump, rack } of path) corner.moveTo(bump, rack);
}

/** Times the linkages and the same double wishbone through a generic solver. Takes a few seconds. */
export async function linkageBench(): Promise<BenchRow[]> {
  const wishbone = doubleWishbone(exampleWishbone);
  const sprung = strut(exampleStrut);
  const axle = liveAxle(exampleLiveAxle);
  const generic = genericWishbone(exampleWishbone);

  const solved = (milliseconds(20, () => walk(wishbone)) / positions) * 1000;
  const peer = {
    name: "ml-levenberg-marquardt",
    value:
      (milliseconds(1, () => {
        for (const { bump, rack } of path) generic(bump, rack);
      }) /
        positions) *
      1000,
  };
  const read = milliseconds(20, () => {
    for (const { bump, rack } of path) {
      wishbone.moveTo(bump, rack);
      readCorner(wishbone);
    }
  });
  const sweep = milliseconds(20, () => {
    sweepBump(wishbone, { from: -0.08, to: 0.08, positions });
  });
  const strutSolved = milliseconds(20, () => walk(sprung));
  const live = milliseconds(2, () => {
    for (const { bump } of path) {
      axle.moveTo(bump, -bump / 2);
      readLiveAxle(axle);
    }
  });
  const minute = Math.PI / 10_800;
  const plan = milliseconds(2, () => {
    planAdjustment({
      assemble: (adjustment) => doubleWishbone(exampleWishbone, adjustment),
      adjusters: exampleAdjusters,
      target: { camber: -60 * minute, castor: 280 * minute, toeIn: 8 * minute },
      tolerance: { camber: 5 * minute, castor: 15 * minute, toeIn: 2 * minute },
    });
  });
  return [
    { ...row("double wishbone, one position with steering", solved, "µs"), peer, ratio: peer.value / solved },
    row("double wishbone, one position with steering and all readings", (read / positions) * 1000, "µs"),
    row("double wishbone, 201-position sweep with all readings", sweep, "ms"),
    row("strut, one position with steering", (strutSolved / positions) * 1000, "µs"),
    row("live axle, one position with all readings", (live / positions) * 1000, "µs"),
    row("plan for three adjusters and three angles", plan, "ms"),
  ];
}
