/** Bytes of a file of cars that are read at most: looked at where it is chosen, and held to where it is read. */
export const registerFileBytes = 32_000_000;
