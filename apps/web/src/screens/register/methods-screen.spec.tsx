import { fireEvent, screen, waitFor } from '@testing-library/react';
import { userEvent } from '@testing-library/user-event';
import type { Role } from '#libs/contract/src/index.js';
import { refusal, show } from '#test/support/page.js';
import { MethodScreen } from './methods-screen.js';

const METHOD = {
  ...{ id: 'm', designation: 'ISO 527-2', title: 'Plastics', version: 2, state: 'offered', versions: [] },
  data: { source: 'ISO 527-2', confidence: 'read in the source', results: [], speeds: [], hazards: [] },
};
const text = () => screen.findByLabelText<HTMLTextAreaElement>('Parameters, as JSON');
const offer = () => userEvent.click(screen.getByRole('button', { name: 'Offer it as version 3' }));
const wrong = () => [...document.querySelectorAll('[id$="-wrong"]')].map(({ textContent }) => textContent);
const open = (answer: unknown, roles: Role[] = ['manager']) =>
  show(<MethodScreen id="m" />, { 'GET /methods/m': METHOD, 'POST /methods': answer }, { roles });

describe('the next version of a method', () => {
  it('says at the text that it is no JSON, and sends nothing', async () => {
    const { sent } = open({});
    fireEvent.change(await text(), { target: { value: '{ "source": }' } });
    await offer();
    await waitFor(() => expect(wrong()).toEqual([expect.stringMatching(/^The text is not JSON: /)]));
    expect(sent).toEqual([]);
  });

  it('tells at the text everything that is refused, each with its field', async () => {
    open(refusal({ 'data.minSpecimens': 'data.minSpecimens is 0.', 'data.source': 'data.source is missing.' }));
    fireEvent.change(await text(), { target: { value: '{ "minSpecimens": 0 }' } });
    await offer();
    await waitFor(() => expect(wrong()).toEqual(['Data, min specimens is 0. Data, source is missing.']));
    expect(document.activeElement).toBe(await text());
  });

  it('is only read by those who may not change it', async () => {
    open({}, ['technician']);
    expect((await screen.findByText(/"confidence"/)).tagName).toBe('PRE');
    expect(screen.queryByRole('button')).toBeNull();
  });
});
