import type { CheckSource } from "../check";

/** What scrutineers look at on any car, written down nowhere in particular. */
export const practice: CheckSource = { title: "Common practice, no source" };

/** A chapter of the national competition rules of 2025, as they could be read; current regulations decide. */
export const national = (clause: string): CheckSource => ({
  title: "National competition rules (United Kingdom)",
  edition: "2025, version 11",
  clause,
});

/** Recalled from national yearbooks, not seen. */
export const yearbook: CheckSource = {
  title: "National yearbook, car technical regulations, from memory",
  edition: "2015-2023",
};

/** International technical regulations, as reproduced in public. */
export const international = (clause: string): CheckSource => ({
  title: "International technical regulations for cars, safety equipment",
  edition: "edition not stated",
  clause,
});

/** A figure of a bolt, thread or tyre standard behind the reason. */
export const standard = (title: string): CheckSource => ({ title });

/** The towing-eye text of the national yearbook of 2017, as quoted in public. */
export const towing: CheckSource = {
  title: "National yearbook, towing eyes, as quoted in public",
  edition: "2017",
};

/** Fuel, oil and hydraulic lines of the international regulations, as reproduced; the copy does not say its edition. */
export const lines: CheckSource = {
  title: "International technical regulations for cars, lines and pumps, as reproduced",
  edition: "edition not stated",
  clause: "article 3.2",
};

/** Seat supports in the national yearbook, as quoted in public; the quotation does not say its edition. */
export const seating: CheckSource = {
  title: "National yearbook, seats, as quoted in public",
  edition: "edition not stated",
  clause: "K 2.2",
};

/** Helmets: the national list of 2024 as a scrutineer's note relays it; the international list of December 2024 differs. */
export const helmets: CheckSource = {
  title: "National helmet list as relayed; the international list 25 (12/2024) differs",
  edition: "2024",
};

/** A historic road class's page that quotes the national yearbook. */
export const historicClass: CheckSource = {
  title: "National yearbook, historic road classes, as quoted in public",
  edition: "edition not stated",
};

/** Where a public glossary gives a figure of the international rules. */
export const glossary = (clause: string): CheckSource => ({
  title: "International rules, as a public glossary gives them",
  edition: "edition not stated",
  clause,
});
