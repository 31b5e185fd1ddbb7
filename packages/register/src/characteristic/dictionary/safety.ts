import type { Characteristic } from "../characteristic";
import { choice, date, part, removablePart, text } from "./preset";

const assembly = "safety";
const item = { ...part, assembly } as const;
const optional = { ...removablePart, assembly } as const;

/** Safety equipment, with the standards and the dates on its labels. */
export const safety: readonly Characteristic[] = [
  {
    ...optional,
    ...choice(
      { code: "hoop", label: "Rear hoop", also: ["roll hoop", "roll-over bar", "rollover bar", "hoop"] },
      { code: "bolted", label: "Cage, bolted", also: ["bolt-in cage", "bolted cage", "cage"] },
      { code: "welded", label: "Cage, welded", also: ["weld-in cage", "welded cage"] },
    ),
    key: "safety.rollStructure",
    label: "Roll-over structure",
    also: ["Roll cage", "Roll over bar"],
    help: "What keeps the roof off the driver. Say not fitted where there is none.",
  },
  {
    ...optional,
    ...choice(
      { code: "lap", label: "Lap belt", also: ["lap"] },
      {
        code: "threePoint",
        label: "Three-point belt",
        also: ["3 point", "three point", "3-point", "inertia reel"],
      },
      { code: "fourPoint", label: "Four-point harness", also: ["4 point", "four point", "4-point"] },
      { code: "fivePoint", label: "Five-point harness", also: ["5 point", "five point", "5-point"] },
      { code: "sixPoint", label: "Six-point harness", also: ["6 point", "six point", "6-point"] },
    ),
    key: "safety.harness.kind",
    label: "Harness",
    also: ["Harness kind", "Seat belt", "Seat belts", "Belts"],
    help: "How many points hold the driver.",
  },
  {
    ...optional,
    ...text,
    maximumLength: 60,
    key: "safety.harness.standard",
    label: "Harness standard",
    also: ["Harness homologation"],
    help: "Standard and number on the label sewn to the harness.",
  },
  {
    ...item,
    ...date,
    key: "safety.harness.expires",
    label: "Harness valid until",
    also: ["Harness expiry", "Harness date", "Harness expires"],
    help: "Last day of validity on the label; a year alone means its last day.",
  },
  {
    ...optional,
    ...text,
    maximumLength: 60,
    key: "safety.seat.standard",
    label: "Seat standard",
    also: ["Seat homologation"],
    help: "Standard on the label of the seat shell. Say not fitted for a road seat without one.",
  },
  {
    ...item,
    ...date,
    key: "safety.seat.expires",
    label: "Seat valid until",
    also: ["Seat expiry", "Seat expires"],
    help: "Last day of validity on the label; a year alone means its last day.",
  },
  {
    ...optional,
    ...choice(
      { code: "handHeld", label: "Hand-held", also: ["hand held", "portable"] },
      { code: "plumbed", label: "Plumbed-in", also: ["plumbed", "plumbed in", "system"] },
      { code: "both", label: "Plumbed-in and hand-held", also: ["both extinguishers"] },
    ),
    key: "safety.extinguisher.kind",
    label: "Fire extinguisher",
    also: ["Extinguisher", "Extinguisher kind"],
    help: "What there is to put out a fire. Say not fitted where there is none.",
  },
  {
    ...item,
    ...date,
    key: "safety.extinguisher.serviceDue",
    label: "Extinguisher service due",
    also: ["Extinguisher expiry", "Extinguisher date", "Fire extinguisher service due"],
    help: "Last day before the next service, from the label.",
  },
  {
    ...item,
    ...text,
    maximumLength: 60,
    key: "safety.helmet.standard",
    label: "Helmet standard",
    also: ["Helmet"],
    help: "Standard and year on the label inside the driver's helmet.",
  },
  {
    ...item,
    ...date,
    key: "safety.helmet.expires",
    label: "Helmet valid until",
    also: ["Helmet expiry", "Helmet expires"],
    help: "Last day of validity, where the standard or the organiser gives one.",
  },
  {
    ...optional,
    ...choice(
      { code: "front", label: "Front only", also: ["front"] },
      { code: "frontRear", label: "Front and rear", also: ["both", "front and back"] },
      { code: "rear", label: "Rear only", also: ["rear"] },
    ),
    key: "safety.towEye",
    label: "Towing eye",
    also: ["Tow eye", "Towing eyes"],
    help: "Where a marked eye or strap is fitted.",
  },
];
