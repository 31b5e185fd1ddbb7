const written = new Intl.DateTimeFormat("en-GB", { dateStyle: "long", timeZone: "UTC" });

/** An ISO day as pages write it: "25 November 2026". */
export function sayLongDay(iso: string): string {
  return written.format(new Date(`${iso}T00:00:00Z`));
}
