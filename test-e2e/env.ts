function needed(name: string): string {
  const value = process.env[name];
  if (value === undefined || value === "")
    throw new Error(`${name} is not set: run npm test, or node test-e2e/bin/e2e.mjs`);
  return value;
}

/** Where the application under test is, where its data is, and the browser to look with; given by bin/e2e.mjs. */
export const environment = {
  origin: needed("TRUNNION_ORIGIN"),
  chromium: needed("TRUNNION_CHROMIUM"),
  data: needed("TRUNNION_DATA"),
  /** All of it, for a program started from here. */
  all: process.env,
};
