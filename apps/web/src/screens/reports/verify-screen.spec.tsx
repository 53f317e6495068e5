import { screen } from '@testing-library/react';
import type { VerifyView } from '#libs/contract/src/index.js';
import { show } from '#test/support/page.js';
import type { Sent } from '#test/support/page.js';
import { VerifyScreen } from './verify-screen.js';

const ISSUED: VerifyView = {
  ...{ number: 'TR-2026-0077', revision: 1, known: true, matches: null },
  ...{ supersededBy: 2, issuedAt: '2026-11-20T10:00:00.000Z' },
};

function open(address: string, answer: (asked: Sent) => VerifyView) {
  history.replaceState(null, '', address);
  show(<VerifyScreen />, { 'GET /verify/TR-2026-0077': answer });
}
const fileQuestion = () => screen.queryByLabelText(/^Is the file/);

describe('the page that verifies a report', () => {
  it('asks for the revision that the code on the report names, and says what replaced it', async () => {
    const revisions: (string | null)[] = [];
    open('/verify/TR-2026-0077?revision=1', ({ query }) => {
      revisions.push(query.get('revision'));
      return ISSUED;
    });
    await screen.findByText('It is replaced by revision 2.');
    expect(revisions).toEqual(['1']);
    expect(fileQuestion()).not.toBeNull();
  });

  it('asks for another number where none is known, and for no file to compare', async () => {
    open('/verify/TR-2026-0077', () => ({ ...ISSUED, known: false, supersededBy: null, issuedAt: null }));
    await screen.findByText(/^No report of this lab/);
    expect(screen.getByLabelText<HTMLInputElement>('Number on the report').value).toBe('TR-2026-0077');
    expect(fileQuestion()).toBeNull();
  });
});
