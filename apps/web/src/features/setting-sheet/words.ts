/** How the car was loaded, in words. */
export const loadWords = {
  kerb: "at kerb weight",
  driver: "driver aboard",
  driverAndPassenger: "driver and passenger aboard",
  unknown: "load not said",
} as const;

/** Of two sheets of one day. */
export const pairWords = { asFound: "as found", asLeft: "as left" } as const;

/** What a car's new sheet is kept under in the browser until it is handed in. */
export const sheetFormName = (car: string): string => `setting.${car}`;
