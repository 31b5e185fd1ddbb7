/** What the surroundings say of where photographs and documents are kept; read by `readStoreSettings`. */
export const storeSurroundings: Readonly<Record<string, string | undefined>> = Object.fromEntries(
  Object.entries(process.env).filter(([name]) => name.startsWith("TRUNNION_STORE")),
);
