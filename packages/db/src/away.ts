/** What the driver says of a connection that is gone; it has no code for it. */
const WORDS =
  /connection error and is not queryable|connection terminated|server closed the connection|client was closed/i;
/** Prisma's codes for a server that cannot be reached, does not answer, or has closed the connection. */
const CODES = new Set(["P1001", "P1002", "P1017"]);
/** Kinds of the driver's errors of that meaning. */
const KINDS = new Set(["DatabaseNotReachable", "ConnectionClosed", "SocketTimeout", "TooManyConnections"]);
/**
 * PostgreSQL's own codes: the class of connection exceptions, too many connections, and what a server says while it goes
 * down, fell over, or starts (PostgreSQL manual, appendix A, classes 08, 53 and 57).
 */
const STATES = /^(?:08...|53300|57P0[123])$/;
const SYSTEM = new Set(["ECONNREFUSED", "ECONNRESET", "EPIPE", "ETIMEDOUT", "ENOTFOUND"]);

interface Said {
  readonly message?: unknown;
  readonly code?: unknown;
  readonly kind?: unknown;
  readonly originalCode?: unknown;
  readonly cause?: unknown;
  readonly meta?: { readonly driverAdapterError?: unknown };
}

/** Deepest chain of causes that is looked through. */
const DEPTH = 6;

/**
 * True of an error that says the database is not there: it could not be reached, or the connection was lost on the way. What
 * was under way then is taken back by the database, whole; the same may be asked for again.
 */
export function databaseAway(error: unknown, depth = DEPTH): boolean {
  if (typeof error !== "object" || error === null || depth === 0) return false;
  const { message, code, kind, originalCode, cause, meta } = error as Said;
  const codes = [code, originalCode].filter((one) => typeof one === "string");
  if (codes.some((one) => CODES.has(one) || STATES.test(one) || SYSTEM.has(one))) return true;
  if (typeof kind === "string" && KINDS.has(kind)) return true;
  if (typeof message === "string" && WORDS.test(message)) return true;
  return databaseAway(cause, depth - 1) || databaseAway(meta?.driverAdapterError, depth - 1);
}
