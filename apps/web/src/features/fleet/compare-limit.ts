/** Most cars that are named for a comparison; up to six of them stand in columns. */
export const mostCompared = 40;

/** Longest list of their numbers that an address may have. */
export const longestCars = 800;
