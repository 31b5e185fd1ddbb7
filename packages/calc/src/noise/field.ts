import { quantity } from "../catalogue/field";

/** A level as a meter shows it. */
export const levelField = (label: string, help?: string) =>
  quantity("soundLevel", { label, min: 0, max: 180, unit: "dB(A)", ...(help === undefined ? {} : { help }) });

/** A difference of levels, dB. */
export const differenceField = (label: string, help: string) =>
  quantity("soundLevel", { label, help, min: 0, max: 20, unit: "dB" });

export const distanceField = (label: string) => quantity("length", { label, above: 0, max: 1000, unit: "m" });

/** More sources or readings than this are a slip of the pen. */
export const mostLevels = 50;

export const acoustics = {
  title: "Point source in a free field; sum of incoherent sources",
  status: "memory",
} as const;
export const noiseCaution =
  "Hearing suffers: wear protection near a running exhaust. The organiser's limit, method and meter decide, and circuits may set lower limits.";
