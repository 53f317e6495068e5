import { LabError } from '#libs/errors/src/index.js';
import type { LabRequest } from './signed-in.js';

/** A header that a page of another site cannot send without asking first, which is never allowed. */
export const OWN_PAGE_HEADER = 'x-lab-page';

const HARMLESS = ['GET', 'HEAD', 'OPTIONS'];

/**
 * Refuses a change that another site's page makes a signed-in browser send: besides the cookie's own SameSite, by where the
 * browser says it comes from, and by a header of our own page.
 *
 * @throws {LabError} `access/forbidden`
 */
export function refuseForgery(request: Pick<LabRequest, 'method' | 'headers'>): void {
  if (HARMLESS.includes(request.method)) return;
  const { origin, host } = request.headers;
  const site = request.headers['sec-fetch-site'];
  const fromElsewhere =
    (site !== undefined && site !== 'same-origin') || (origin !== undefined && hostOf(origin) !== host);
  if (fromElsewhere || request.headers[OWN_PAGE_HEADER] === undefined) {
    throw new LabError(
      'access/forbidden',
      `Changes are taken from the lab’s own page only: send the header ${OWN_PAGE_HEADER}, or a token.`,
    );
  }
}

function hostOf(origin: string): string | null {
  return URL.canParse(origin) ? new URL(origin).host : null;
}
