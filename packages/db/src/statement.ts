import pg from "pg";

/** A statement as the driver was given it. */
export interface Statement {
  readonly text: string;
  readonly values: readonly unknown[];
}

interface Given {
  readonly text?: string;
  readonly values?: readonly unknown[];
}

const transaction = /^\s*(?:BEGIN|COMMIT|ROLLBACK|SAVEPOINT|RELEASE|SET|SELECT set_config)/i;

/**
 * Does some work and notes down every statement this process sends meanwhile, in order, those that begin and end
 * transactions aside: so that plans are read and the bare driver is measured on what is really sent. For tests and
 * benchmarks, one at a time.
 */
export async function recordStatements<T>(
  work: () => Promise<T>,
): Promise<{ readonly result: T; readonly statements: readonly Statement[] }> {
  const statements: Statement[] = [];
  const { query } = pg.Client.prototype;
  const recording = function (this: pg.Client, ...args: unknown[]) {
    const [first, second] = args;
    const { text = "", values }: Given = typeof first === "string" ? { text: first } : (first as Given);
    if (text !== "" && !transaction.test(text))
      statements.push({ text, values: values ?? (Array.isArray(second) ? second : []) });
    return (query as (...given: readonly unknown[]) => unknown).apply(this, args);
  };
  pg.Client.prototype.query = recording as typeof query;
  try {
    return { result: await work(), statements };
  } finally {
    pg.Client.prototype.query = query;
  }
}
