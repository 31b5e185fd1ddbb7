/** A dated item that is also a characteristic of the car: what is read off its label changes both. */
export interface DatedItemKind {
  /** As the record files it. */
  readonly kind: string;
  readonly label: string;
  /** Characteristic that holds the day. */
  readonly characteristic: string;
}

/** Dated items whose day a check can read off a label. */
export const datedItemKinds: readonly DatedItemKind[] = [
  { kind: "harness", label: "Harness", characteristic: "safety.harness.expires" },
  { kind: "seat", label: "Seat", characteristic: "safety.seat.expires" },
  { kind: "extinguisher", label: "Extinguisher", characteristic: "safety.extinguisher.serviceDue" },
  { kind: "helmet", label: "Helmet", characteristic: "safety.helmet.expires" },
];

/** The dated item a characteristic is the day of; undefined for any other. */
export function datedItemOf(characteristic: string): DatedItemKind | undefined {
  return datedItemKinds.find((item) => item.characteristic === characteristic);
}
