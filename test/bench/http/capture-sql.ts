import pg from 'pg';

/** A statement as it went to the database. */
export interface Statement {
  text: string;
  values: unknown[];
}

type Query = (this: pg.Client, ...given: unknown[]) => unknown;

/** Notes every statement that this process sends while something is done. */
export async function captureSql<Done>(act: () => Promise<Done>): Promise<{ statements: Statement[]; done: Done }> {
  const prototype = pg.Client.prototype as unknown as { query: Query };
  const original = prototype.query;
  const statements: Statement[] = [];
  prototype.query = function (...given) {
    const [first, second] = given as [string | { text?: string; values?: unknown[] }, unknown];
    if (typeof first === 'string') statements.push({ text: first, values: Array.isArray(second) ? second : [] });
    else if (first.text !== undefined) statements.push({ text: first.text, values: first.values ?? [] });
    return original.apply(this, given);
  };
  try {
    return { done: await act(), statements };
  } finally {
    prototype.query = original;
  }
}
