/** What PostgreSQL's own programs and its client library would take from the surroundings. */
const STEERS_POSTGRES = /^(PG[A-Z]+|LC_[A-Z]+|LANG|LANGUAGE|TZ)$/;

/**
 * The environment for PostgreSQL's own programs: this process's own, without whatever would steer them
 * (PGDATA, PGPORT, the user's locale and time zone), so that a data folder made on one machine is like any other.
 */
export function postgresEnvironment(): NodeJS.ProcessEnv {
  const kept = Object.entries(process.env).filter(([name]) => !STEERS_POSTGRES.test(name));
  return { ...Object.fromEntries(kept), NODE_ENV: process.env.NODE_ENV, LC_ALL: "C", TZ: "UTC" };
}
