const monthNames = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/**
 * An ISO day as people read it.
 * @throws RangeError for a text that is no ISO day
 * @example sayDay("1998-03-12") // => "12 Mar 1998"
 */
export function sayDay(iso: string): string {
  const [, year = "", month = "", day = ""] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso) ?? [];
  const name = monthNames[Number(month) - 1];
  if (name === undefined) throw new RangeError(`"${iso}" is no ISO day such as 1998-03-12`);
  return `${Number(day)} ${name} ${year}`;
}
