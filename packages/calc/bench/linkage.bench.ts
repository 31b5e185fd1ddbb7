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
const rounds = 150;
/** Long enough for the compiler, whose own thread must find time on a busy machine. */
const warmUpMs = 2_000;

/** Positions in bump and steer together, as a driver and a road would ask for them. */
const path = Array.from({ length: positions }, (_, index) => ({
  bump: -0.08 + (0.16 * index) / (positions - 1),
  rack: 0.045 * Math.sin(index / 9),
}));

/** Every tenth of them for what takes a hundred times as long: a round must be short. */
const fewPositions = path.filter((_, index) => index % 10 === 0);

/**
 * Least time of a call in milliseconds, once warm: the least of many short ones, because whatever else
 * the machine does only ever adds, and interrupts long ones every time.
 */
function milliseconds(run: () => void): number {
  const warm = now() + warmUpMs;
  while (now() < warm) run();
  let least = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round += 1) {
    const start = now();
    run();
    least = Math.min(least, now() - start);
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

  const solved = (milliseconds(() => walk(wishbone)) / positions) * 1000;
  const peer = {
    name: "ml-levenberg-marquardt",
    value:
      (milliseconds(() => {
        for (const { bump, rack } of fewPositions) generic(bump, rack);
      }) /
        fewPositions.length) *
      1000,
  };
  const read = milliseconds(() => {
    for (const { bump, rack } of path) {
      wishbone.moveTo(bump, rack);
      readCorner(wishbone);
    }
  });
  const sweep = milliseconds(() => {
    sweepBump(wishbone, { from: -0.08, to: 0.08, positions });
  });
  const strutSolved = milliseconds(() => walk(sprung));
  const live = milliseconds(() => {
    for (const { bump } of path) {
      axle.moveTo(bump, -bump / 2);
      readLiveAxle(axle);
    }
  });
  const minute = Math.PI / 10_800;
  const plan = milliseconds(() => {
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
