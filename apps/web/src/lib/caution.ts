/** What can hurt somebody, and who decides, where it is read. */
export const cautions = {
  car: [
    "This record is an aid. It certifies no roadworthiness: a competent mechanic, the organiser's regulations and the law where you drive decide.",
    "What is not recorded is not known to be right. Support the car on stands before anyone reaches underneath.",
  ],
  event: [
    "A sheet is an aid to scrutineering. The organiser's current regulations and the scrutineer on the day decide.",
  ],
  plan: [
    "A plan is an aid. Measure after each step, and stop where the car does not answer as expected: then a hardpoint is not where it was said to be. Keep the thread engagement the workshop manual asks for, lock everything before the car moves, and have the work checked by a competent mechanic.",
  ],
  study: [
    "A model of steady cornering, no promise of how the car behaves: tyres, bumps and the driver are not in it. Have springs and bars chosen and fitted by somebody competent, and try the car with room around it.",
  ],
  setting: [
    "Readings say how the car stood on one day, with one load, on one floor. They certify nothing: a competent mechanic, the organiser's regulations and the law where you drive decide.",
    "Support the car on stands before anyone reaches underneath, and tighten and lock whatever was moved before the car is driven.",
  ],
} as const;
