import { jest } from '@jest/globals';
import { cleanup, fireEvent, render, screen, waitFor } from '@testing-library/react';
import { userEvent } from '@testing-library/user-event';
import { FormFrame, SubmitButton } from './form-frame.js';
import { FormList } from './form-list.js';
import { FormNumber } from './form-number.js';
import { FormSelect } from './form-select.js';
import { FormText } from './form-text.js';
import { FormTick } from './form-ticks.js';
import { useLabForm } from './use-lab-form.js';
import type { LabFormOptions } from './use-lab-form.js';

interface Order {
  title: string;
  width: string;
  colour: string;
  urgent: boolean;
  lines: { text: string }[];
}

const EMPTY: Order = { title: '', width: '', colour: '', urgent: false, lines: [{ text: 'first' }] };

function OrderForm(options: Partial<LabFormOptions<Order>> & Pick<LabFormOptions<Order>, 'send'>) {
  const form = useLabForm<Order>({ initial: EMPTY, ...options });
  return (
    <>
      <FormFrame form={form} label="Order">
        <FormText form={form} name="title" label="What for" called="The title" needed="Say what it is for." />
        <details>
          <summary>More</summary>
          <FormNumber form={form} name="width" label="Width" unit="mm" min={1} max={50} />
        </details>
        <FormSelect form={form} name="colour" label="Colour" none="any" choices={[{ value: 'red', label: 'red' }]} />
        <FormTick form={form} name="urgent" label="Urgent" />
        <FormList
          form={form}
          name="lines"
          label="Lines"
          fresh={{ text: '' }}
          add="Add a line"
          row={(at) => <FormText form={form} name={`lines.${at}.text`} label={`Line ${at + 1}`} />}
        />
      </FormFrame>
      <SubmitButton form={form} value="draft">
        Save
      </SubmitButton>
      <SubmitButton form={form} value="send">
        {form.pending ? 'On its way' : 'Send'}
      </SubmitButton>
      <output>{form.dirty ? 'typed' : 'as it was'}</output>
    </>
  );
}

const field = (name: string) => screen.getByLabelText<HTMLInputElement>(name);
const press = (name: string) => userEvent.click(screen.getByRole('button', { name }));
const wrongAt = (name: string) =>
  (field(name).getAttribute('aria-describedby') ?? '')
    .split(' ')
    .map((id) => document.getElementById(id)?.textContent)
    .join(' ');

/** A refusal as the calls of the API throw it. */
function refused(...refusals: { field: string; sentence: string; rest?: string }[]): Error {
  return Object.assign(new Error('All of it is refused.'), { refusals });
}

describe('a form', () => {
  it('sends what was typed, with the button that was pressed', async () => {
    const send = jest.fn<(values: Order, button: string) => void>();
    render(<OrderForm send={send} />);
    await userEvent.type(field('What for'), 'Lot 7');
    await userEvent.type(field('Width, mm'), '12,5');
    await userEvent.selectOptions(field('Colour'), 'red');
    await userEvent.click(field('Urgent'));
    await press('Add a line');
    await userEvent.type(field('Line 2'), 'second');
    await press('Save');
    expect(send.mock.calls).toEqual([
      [
        { title: 'Lot 7', width: '12,5', colour: 'red', urgent: true, lines: [{ text: 'first' }, { text: 'second' }] },
        'draft',
      ],
    ]);
  });

  it('sends nothing while a field is wrong, says so beside it, and puts the cursor there', async () => {
    const send = jest.fn();
    render(<OrderForm send={send} />);
    await press('Send');
    expect(wrongAt('What for')).toBe('Say what it is for.');
    await waitFor(() => expect(document.activeElement).toBe(field('What for')));
    expect(send).not.toHaveBeenCalled();
    await userEvent.type(field('What for'), 'x');
    expect(field('What for').getAttribute('aria-invalid')).toBeNull();
  });

  it.each([
    ['1', undefined],
    ['0,9', 'Width may be 1 to 50 mm.'],
    ['50', undefined],
    ['50,1', 'Width may be 1 to 50 mm.'],
  ])('reads a width of %p within its bounds', async (text, sentence) => {
    const send = jest.fn();
    render(<OrderForm send={send} />);
    await userEvent.type(field('What for'), 'x');
    await userEvent.type(field('Width, mm'), text);
    await press('Send');
    expect(send).toHaveBeenCalledTimes(sentence ? 0 : 1);
    if (sentence) expect(wrongAt('Width, mm')).toBe(sentence);
  });

  it('shows what the server refuses at its fields under their own names, the first of them unfolded and with the cursor', async () => {
    const send = () => {
      throw refused(
        { field: 'lines[0].text', sentence: 'Text is too long.', rest: 'is too long.' },
        { field: 'sizes.widthMm', sentence: 'Width is missing.', rest: 'is missing.' },
      );
    };
    render(<OrderForm send={send} fieldOf={(path) => path.replace('sizes.widthMm', 'width')} />);
    await userEvent.type(field('What for'), 'Lot 7');
    await press('Send');
    await waitFor(() => expect(document.activeElement).toBe(field('Width, mm')));
    expect(wrongAt('Width, mm')).toBe('Width is missing.');
    expect(wrongAt('Line 1')).toBe('Line 1 is too long.');
    expect(field('Width, mm').closest('details')!.open).toBe(true);
    expect(screen.queryByRole('alert')).toBeNull();
    expect(field('What for').value).toBe('Lot 7');
  });

  it('shows at its head what is about none of its fields, and only that', async () => {
    const answers = [
      new Error('The lab is closed.'),
      refused(
        { field: 'title', sentence: 'Title is odd.', rest: 'is odd.' },
        { field: 'team', sentence: 'Team is missing.', rest: 'is missing.' },
      ),
    ];
    const send = () => {
      throw answers.shift()!;
    };
    render(<OrderForm send={send} />);
    await userEvent.type(field('What for'), 'x');
    await press('Send');
    expect((await screen.findByRole('alert')).textContent).toBe('The lab is closed.');
    await waitFor(() => expect(document.activeElement).toBe(screen.getByRole('alert')));
    await press('Send');
    await waitFor(() => expect(screen.getByRole('alert').textContent).toBe('Team is missing.'));
    expect(wrongAt('What for')).toBe('The title is odd.');
  });

  it('says what its own check finds, before anything is sent', async () => {
    const send = jest.fn();
    render(<OrderForm send={send} check={({ colour }) => (colour ? {} : { colour: 'Choose a colour.' })} />);
    await userEvent.type(field('What for'), 'x');
    await press('Send');
    await waitFor(() => expect(document.activeElement).toBe(field('Colour')));
    expect(wrongAt('Colour')).toBe('Choose a colour.');
    expect(send).not.toHaveBeenCalled();
    await userEvent.selectOptions(field('Colour'), 'red');
    await press('Send');
    expect(send).toHaveBeenCalledTimes(1);
  });

  it('is sent once, however often its button is pressed', async () => {
    let answer = () => {};
    const send = jest.fn(() => new Promise<void>((resolve) => (answer = resolve)));
    render(<OrderForm send={send} />);
    await userEvent.type(field('What for'), 'x');
    await press('Send');
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'On its way' }).disabled).toBe(true);
    fireEvent.submit(screen.getByRole('form', { name: 'Order' }));
    expect(send).toHaveBeenCalledTimes(1);
    answer();
    await screen.findByRole('button', { name: 'Send' });
    expect(screen.getByRole('status').textContent).toBe('as it was');
  });

  it('begins anew once it is sent, where it is to be filled in again', async () => {
    render(<OrderForm send={() => undefined} after="clear" />);
    await userEvent.type(field('What for'), 'x');
    await press('Send');
    await waitFor(() => expect(field('What for').value).toBe(''));
  });

  it('keeps what is typed over a reload until it is sent, also when it was refused', async () => {
    const answers = [new Error('Not now.'), null];
    const send = () => {
      const error = answers.shift();
      if (error) throw error;
    };
    const { unmount } = render(<OrderForm send={send} keepAs="order" />);
    await userEvent.type(field('What for'), 'Lot 7');
    await press('Send');
    await screen.findByRole('alert');
    unmount();
    render(<OrderForm send={send} keepAs="order" />);
    expect(field('What for').value).toBe('Lot 7');
    expect(screen.getByRole('status').textContent).toBe('typed');
    await press('Send');
    await waitFor(() => expect(screen.getByRole('status').textContent).toBe('as it was'));
    cleanup();
    render(<OrderForm send={send} keepAs="order" />);
    expect(field('What for').value).toBe('');
  });

  it('follows what comes from the server in fields that nobody touched', async () => {
    const send = jest.fn();
    const { rerender } = render(<OrderForm send={send} />);
    await userEvent.type(field('What for'), 'mine');
    rerender(<OrderForm send={send} initial={{ ...EMPTY, title: 'theirs', width: '7' }} />);
    await waitFor(() => expect(field('Width, mm').value).toBe('7'));
    expect(field('What for').value).toBe('mine');
  });
});
