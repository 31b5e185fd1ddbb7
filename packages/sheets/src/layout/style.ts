/** Type sizes in points. Body and above are read at arm's length; fine print is for who looks closely. */
export const type = {
  event: 15,
  heading: 11,
  name: 10.5,
  body: 8.8,
  /** Least size of what is read on a scrutineering sheet. */
  text: 8,
  small: 7.4,
  fine: 6.5,
} as const;

/** Line widths in points. */
export const rule = { hair: 0.35, line: 0.7, heavy: 1.3 } as const;

/** Baseline to baseline, in sizes. */
export const leading = 1.2;
/** Height of capitals and depth of descenders in sizes, rounded up. */
export const capHeight = 0.68;
export const ascent = 0.78;
