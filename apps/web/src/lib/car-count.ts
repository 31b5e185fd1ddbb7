const count = new Intl.NumberFormat("en-GB");

/** A number as pages write it: "1,240". */
export const sayCount = (number: number): string => count.format(number);

/** So many cars, in words. */
export const sayCars = (cars: number): string => (cars === 1 ? "1 car" : `${sayCount(cars)} cars`);
