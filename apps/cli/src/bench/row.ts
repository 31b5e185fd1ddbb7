/** One line of the benchmark. */
export interface BenchRow {
  readonly group: string;
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** The same problem through something else, in the same run and unit. */
  readonly peer?: { readonly name: string; readonly value: number };
  /** Peer over ours: how many times as long the peer takes. */
  readonly ratio?: number;
}

/** Median milliseconds of a call, after one to warm up: quoted against a peer of the same run, never alone. */
export async function medianMs(runs: number, work: () => unknown): Promise<number> {
  await work();
  const times: number[] = [];
  for (let run = 0; run < runs; run++) {
    const begun = performance.now();
    await work();
    times.push(performance.now() - begun);
  }
  times.sort((a, b) => a - b);
  return times[Math.floor(times.length / 2)] ?? Number.NaN;
}
