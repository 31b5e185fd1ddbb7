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
  clause,
});

/** A figure of a bolt, thread or tyre standard behind the reason. */
export const standard = (title: string): CheckSource => ({ title });
