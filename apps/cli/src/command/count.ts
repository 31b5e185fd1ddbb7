const grouped = new Intl.NumberFormat("en-GB");

/** How many of something, in words: "1 car", "1,200 cars". */
export const counted = (count: number, one: string, more = `${one}s`): string =>
  `${grouped.format(count)} ${count === 1 ? one : more}`;
