/** Where the statistics come from. */
export const gum = {
  title: "JCGM 100:2008 (GUM)",
  locus: "4.2, 4.3, 5.1, F.2.2.1, G.4",
  status: "memory",
} as const;
export const iso14253 = {
  title: "ISO 14253-1:2017, decision rules",
  locus: "as told by summaries; the standard itself was not seen",
  status: "read",
} as const;
export const jcgm106 = {
  title: "JCGM 106:2012, conformity assessment",
  locus: "7.2 to 7.4",
  status: "memory",
} as const;
export const nistOutliers = {
  title: "NIST/SEMATECH e-Handbook of Statistical Methods",
  locus: "1.3.5.17, modified score of Iglewicz and Hoaglin",
  status: "memory",
} as const;
export const iso5725 = { title: "ISO 5725-6", locus: "repeatability limit", status: "memory" } as const;
