import { fieldProblem, InvalidInput } from '#libs/errors/src/index.js';

/** Where a page of a list by age ended. */
export interface PageEnd {
  createdAt: Date;
  id: string;
}

const CURSOR = /^(\d{1,15})\.([0-9a-f-]{36})$/;

/** A page's last row as a text that the client hands back to get the next page. */
export function cursorOf({ createdAt, id }: PageEnd): string {
  return `${createdAt.getTime()}.${id}`;
}

/** @throws InvalidInput for a text that no page gave out */
export function readCursor(text: string): PageEnd {
  const [, ms, id] = CURSOR.exec(text) ?? [];
  if (ms === undefined || id === undefined) {
    throw new InvalidInput([
      fieldProblem({ field: 'cursor', found: text, allowed: 'the `next` of the page before', unit: '' }),
    ]);
  }
  return { createdAt: new Date(Number(ms)), id };
}
