import { fireEvent, screen, waitFor } from '@testing-library/react';
import { userEvent } from '@testing-library/user-event';
import { refusal, show } from '#test/support/page.js';
import type { Sent } from '#test/support/page.js';
import { ItemFormScreen } from './item-form-screen.js';

const press = (name: string) => userEvent.click(screen.getByRole('button', { name }));
const fill = (label: RegExp, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });

describe('the form of an item', () => {
  it('keeps what every kind has when another kind is chosen, and sends figures in the units of the register', async () => {
    const { sent, at } = show(<ItemFormScreen />, {
      'POST /items': ({ body }: Sent) => ({ ...(body as object), id: 'new' }),
    });
    fill(/^Tag/, 'LC-5K-9');
    await userEvent.selectOptions(screen.getByLabelText('Kind'), 'load-cell');
    expect(screen.getByLabelText<HTMLInputElement>(/^Tag/).value).toBe('LC-5K-9');
    fill(/^Serial number/, '0815');
    await press('Save');
    await waitFor(() => expect(at()).toBe('/register/items/new'));
    expect(sent[0]!.body).toMatchObject({ kind: 'load-cell', tag: 'LC-5K-9', serialNumber: '0815', ratings: {} });
  });

  it('shows what the server refuses beside the field of its path', async () => {
    show(<ItemFormScreen />, { 'POST /items': refusal({ tag: 'tag is missing; allowed is a tag.' }) });
    await press('Save');
    await waitFor(() => expect(screen.getByLabelText(/^Tag/).getAttribute('aria-invalid')).toBe('true'));
    expect(screen.queryByRole('alert')).toBeNull();
  });
});
