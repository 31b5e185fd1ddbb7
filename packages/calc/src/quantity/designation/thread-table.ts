/**
 * Metric threads: nominal diameter in mm → pitches in mm, the coarse one first where there is one.
 * ISO 261, first to third choice, 1 to 52 mm.
 */
export const metricPitches: ReadonlyMap<
  number,
  { readonly coarse?: number; readonly fine: readonly number[] }
> = new Map([
  [1, { coarse: 0.25, fine: [0.2] }],
  [1.2, { coarse: 0.25, fine: [0.2] }],
  [1.4, { coarse: 0.3, fine: [0.2] }],
  [1.6, { coarse: 0.35, fine: [0.2] }],
  [1.8, { coarse: 0.35, fine: [0.2] }],
  [2, { coarse: 0.4, fine: [0.25] }],
  [2.2, { coarse: 0.45, fine: [0.25] }],
  [2.5, { coarse: 0.45, fine: [0.35] }],
  [3, { coarse: 0.5, fine: [0.35] }],
  [3.5, { coarse: 0.6, fine: [0.35] }],
  [4, { coarse: 0.7, fine: [0.5] }],
  [4.5, { coarse: 0.75, fine: [0.5] }],
  [5, { coarse: 0.8, fine: [0.5] }],
  [5.5, { fine: [0.5] }],
  [6, { coarse: 1, fine: [0.75] }],
  [7, { coarse: 1, fine: [0.75] }],
  [8, { coarse: 1.25, fine: [1, 0.75] }],
  [9, { coarse: 1.25, fine: [1, 0.75] }],
  [10, { coarse: 1.5, fine: [1.25, 1, 0.75] }],
  [11, { coarse: 1.5, fine: [1, 0.75] }],
  [12, { coarse: 1.75, fine: [1.5, 1.25, 1] }],
  [14, { coarse: 2, fine: [1.5, 1.25, 1] }],
  [15, { fine: [1.5, 1] }],
  [16, { coarse: 2, fine: [1.5, 1] }],
  [17, { fine: [1.5, 1] }],
  [18, { coarse: 2.5, fine: [2, 1.5, 1] }],
  [20, { coarse: 2.5, fine: [2, 1.5, 1] }],
  [22, { coarse: 2.5, fine: [2, 1.5, 1] }],
  [24, { coarse: 3, fine: [2, 1.5, 1] }],
  [25, { fine: [2, 1.5, 1] }],
  [26, { fine: [1.5] }],
  [27, { coarse: 3, fine: [2, 1.5, 1] }],
  [28, { fine: [2, 1.5, 1] }],
  [30, { coarse: 3.5, fine: [3, 2, 1.5, 1] }],
  [32, { fine: [2, 1.5] }],
  [33, { coarse: 3.5, fine: [3, 2, 1.5] }],
  [35, { fine: [1.5] }],
  [36, { coarse: 4, fine: [3, 2, 1.5] }],
  [38, { fine: [1.5] }],
  [39, { coarse: 4, fine: [3, 2, 1.5] }],
  [40, { fine: [3, 2, 1.5] }],
  [42, { coarse: 4.5, fine: [4, 3, 2, 1.5] }],
  [45, { coarse: 4.5, fine: [4, 3, 2, 1.5] }],
  [48, { coarse: 5, fine: [4, 3, 2, 1.5] }],
  [50, { fine: [3, 2, 1.5] }],
  [52, { coarse: 5, fine: [4, 3, 2, 1.5] }],
]);

export type InchSeries = "UNC" | "UNF" | "BSW" | "BSF";

/**
 * Inch threads: nominal size → threads per inch. Unified: ASME B1.1; `#` sizes are 0.060 + 0.013 n inches.
 * Whitworth and British Standard Fine: BS 84.
 */
export const threadsPerInch: Readonly<Record<InchSeries, Readonly<Record<string, number>>>> = {
  UNC: {
    "#1": 64,
    "#2": 56,
    "#3": 48,
    "#4": 40,
    "#5": 40,
    "#6": 32,
    "#8": 32,
    "#10": 24,
    "#12": 24,
    "1/4": 20,
    "5/16": 18,
    "3/8": 16,
    "7/16": 14,
    "1/2": 13,
    "9/16": 12,
    "5/8": 11,
    "3/4": 10,
    "7/8": 9,
    "1": 8,
    "1 1/8": 7,
    "1 1/4": 7,
    "1 3/8": 6,
    "1 1/2": 6,
  },
  UNF: {
    "#0": 80,
    "#1": 72,
    "#2": 64,
    "#3": 56,
    "#4": 48,
    "#5": 44,
    "#6": 40,
    "#8": 36,
    "#10": 32,
    "#12": 28,
    "1/4": 28,
    "5/16": 24,
    "3/8": 24,
    "7/16": 20,
    "1/2": 20,
    "9/16": 18,
    "5/8": 18,
    "3/4": 16,
    "7/8": 14,
    "1": 12,
    "1 1/8": 12,
    "1 1/4": 12,
    "1 3/8": 12,
    "1 1/2": 12,
  },
  BSW: {
    "1/16": 60,
    "3/32": 48,
    "1/8": 40,
    "5/32": 32,
    "3/16": 24,
    "7/32": 24,
    "1/4": 20,
    "5/16": 18,
    "3/8": 16,
    "7/16": 14,
    "1/2": 12,
    "9/16": 12,
    "5/8": 11,
    "11/16": 11,
    "3/4": 10,
    "7/8": 9,
    "1": 8,
    "1 1/8": 7,
    "1 1/4": 7,
    "1 1/2": 6,
  },
  BSF: {
    "3/16": 32,
    "7/32": 28,
    "1/4": 26,
    "9/32": 26,
    "5/16": 22,
    "3/8": 20,
    "7/16": 18,
    "1/2": 16,
    "9/16": 16,
    "5/8": 14,
    "11/16": 14,
    "3/4": 12,
    "7/8": 11,
    "1": 10,
    "1 1/8": 9,
    "1 1/4": 9,
    "1 3/8": 8,
    "1 1/2": 8,
  },
};

/** Largest number of the British Association series that is read: BS 93 goes from 0 to 25, 16 is 0.79 mm thick. */
export const largestBaNumber = 16;

/**
 * British Association thread `n`, in mm: pitch 0.9ⁿ, diameter 6 p^1.2, each to two significant figures as BS 93
 * tabulates them.
 */
export function baSize(n: number): { readonly pitch: number; readonly diameter: number } {
  const pitch = 0.9 ** n;
  return { pitch: Number(pitch.toPrecision(2)), diameter: Number((6 * pitch ** 1.2).toPrecision(2)) };
}
