/** What the surroundings say; nothing else here reads them. */
export const env = {
  /** PostgreSQL to use instead of the embedded one, as the role that owns the tables. */
  databaseUrl: process.env.DATABASE_URL || undefined,
  /** Connection of a service role that an administrator made by hand. */
  serviceUrl: process.env.TRUNNION_SERVICE_URL || undefined,
  /** Folder for data, secrets and logs. */
  dataFolder: process.env.TRUNNION_DATA || undefined,
  port: process.env.PORT || undefined,
  /** Numbers of cars that the benchmark of the fleet is run at, with commas between. */
  benchCars: process.env.TRUNNION_BENCH_CARS || undefined,
  /** Started by `npm start` or `npm run dev`. */
  underNpm: process.env.npm_lifecycle_event !== undefined,
};

/** How messages leave, as the surroundings say it. */
export const mailSurroundings = {
  url: process.env.TRUNNION_SMTP_URL,
  from: process.env.TRUNNION_SMTP_FROM,
};

/** The environment of a program started from here: this one's, without what it has no business to know. */
export function childEnvironment(more: Readonly<Record<string, string>> = {}): NodeJS.ProcessEnv {
  const { DATABASE_URL: _owner, TRUNNION_SERVICE_URL: _service, PORT: _port, ...rest } = process.env;
  return { ...rest, NEXT_TELEMETRY_DISABLED: "1", TURBO_TELEMETRY_DISABLED: "1", DO_NOT_TRACK: "1", ...more };
}
