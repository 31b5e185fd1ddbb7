/** What the record gives for a figure, for the line below its field. */
export function sayGiven(from: string | undefined): string {
  return from === undefined ? "Not on the record." : `Left empty: ${from}, from the record.`;
}
