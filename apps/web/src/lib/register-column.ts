import type { RegisterSearch } from "./path";

/** Columns of characteristics beside one another at most. */
export const mostColumns = 8;

/** Characteristics of an address's columns. */
export const columnsOf = ({ col }: RegisterSearch): readonly string[] =>
  (col ?? "")
    .split(",")
    .filter((key) => key !== "")
    .slice(0, mostColumns);
