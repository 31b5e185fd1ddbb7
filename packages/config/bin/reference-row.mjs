// The rows of the collected reference values (published standards, handbooks, textbooks; one source per row) that tests
// are held against. A row added to the collection is added here, and then a test cites it or it is exempt with a reason.

/** Numbers of the rows by topic, spans inclusive. */
export const rows = {
  FAS: "1 3-5 7-9 11-13 15-17 19-21 23-25 27-29 31-33 35-37 39-41 43-48 50-52 54-56 58-62 64-76",
  BAR: "1 3-11 13-15 17-19 21-26",
  ALI: "1-8 10-16",
  KIN: "2-3 5-6 8-9 11",
  LDT: "1 3-5 7-9 11-17 19",
  TYR: "1 3-5 7-9 11-20 26-39 41-51",
  BRK: "1-5 7-10 12-15 17-21 23-27",
  MEA: "1 3-6 8-11 13-15 17-19",
  CWT: "1-2 4-6 8-9 11-14",
  NOI: "1-13",
  SCR: "1-40",
};

/** Rows that no test cites, and why. */
export const exempt = {
  "SCR-10":
    "discharge time of a plumbed-in extinguisher: a type test of the bottle, nothing that is seen on a car",
  "SCR-15":
    "harnesses at international events: the starter rule set is national; an organiser's own rule set says it",
  "SCR-31":
    "a spill kit is carried by rally crews and rescue, not looked at on a car entered for a track day",
};

/** Every row as tests name it: "FAS-01". */
export const ids = Object.entries(rows).flatMap(([topic, spans]) =>
  spans.split(" ").flatMap((span) => {
    const [from, to = from] = span.split("-").map(Number);
    return Array.from(
      { length: to - from + 1 },
      (_, index) => `${topic}-${String(from + index).padStart(2, "0")}`,
    );
  }),
);
