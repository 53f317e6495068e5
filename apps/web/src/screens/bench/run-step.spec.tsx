import { screen, waitFor } from '@testing-library/react';
import { useState } from 'react';
import type { JobView } from '#libs/contract/src/index.js';
import { example, problem, renderPage } from '#test/support/page-server.js';
import type { Answers } from '#test/support/page-server.js';
import { SendingProvider } from '../../features/bench/sending.js';
import { RunStep } from './run-step.js';

const EXAMPLE = example<JobView>('JobView');
const [ONE] = EXAMPLE.specimens;
const ELONGATION = { key: 'elongation-after-fracture', label: 'Elongation after fracture', unit: '%', typed: true };

/** A job of two specimens, of which the first is done and the second has its curve but not its elongation. */
function lastWithItsCurve(): JobView {
  const specimen = (at: number): JobView['specimens'][number] => ({
    ...ONE!,
    id: `s${at}`,
    label: `R-2031-0${at}`,
    fate: 'tested',
    invalidWhy: null,
    dimensions: { widthMm: [10] },
    results: [],
    curve: null,
    reading: null,
    missing: [],
  });
  return {
    ...EXAMPLE,
    id: 'j1',
    state: 'running',
    dimensionsNeeded: [{ key: 'widthMm', label: 'Width', unit: 'mm', readings: 1, nominal: 10 }],
    resultsNeeded: [ELONGATION],
    specimens: [specimen(1), specimen(2)],
  };
}

function Run({ job }: { job: JobView }) {
  const [finishing, setFinishing] = useState(false);
  return finishing ? <p>Conditions</p> : <RunStep job={job} onFinish={() => setFinishing(true)} />;
}

const show = (answers: Answers = () => undefined, job = lastWithItsCurve()) =>
  renderPage(
    <SendingProvider personId="p1">
      <Run job={job} />
    </SendingProvider>,
    answers,
  );
const elongation = () => screen.getByLabelText<HTMLInputElement>(/^Elongation/);
const button = (name: string | RegExp) => screen.getByRole('button', { name });

describe('a run at the bench', () => {
  it('does not go on to the finish while something is typed that is not saved, though every specimen is tested', async () => {
    const { hand, asked } = show((ask) => (ask.what === 'POST /jobs/j1/specimens/s2/results' ? {} : undefined));
    await hand.type(elongation(), '23.5');
    await hand.click(button('All done: finish'));
    expect(screen.getByRole('alert').textContent).toBe(
      '02: something is typed that is not saved. Save it or throw it away, then finish.',
    );
    expect(elongation().value).toBe('23.5');
    await hand.click(button('Save 02'));
    await waitFor(() => expect(elongation().value).toBe(''));
    expect(asked.map(({ what }) => what)).toEqual([
      'PUT /jobs/j1/specimens/s2/dimensions',
      'POST /jobs/j1/specimens/s2/results',
    ]);
    expect(asked[1]!.body).toEqual({ results: [{ key: ELONGATION.key, value: 23.5, unit: '%' }] });
    await hand.click(button('All done: finish'));
    expect(screen.getByText('Conditions')).toBeTruthy();
  });

  it('goes on when what was typed is thrown away', async () => {
    const { hand, asked } = show();
    await hand.type(elongation(), '23.5');
    await hand.click(button('Throw it away'));
    expect(elongation().value).toBe('');
    await hand.click(button('All done: finish'));
    expect(screen.getByText('Conditions')).toBeTruthy();
    expect(asked).toEqual([]);
  });

  it('finds again after a reload what was typed for another specimen than the one on the screen', async () => {
    const { hand, unmount } = show();
    await hand.click(button(/^01/));
    await hand.type(elongation(), '21');
    unmount();
    const { hand: again } = show();
    expect(elongation().value).toBe('');
    await again.click(button('All done: finish'));
    expect(elongation().value).toBe('21');
    expect(screen.getByRole('alert').textContent).toContain('01: something is typed');
  });

  it('keeps on the screen what the server refuses, and says so beside it', async () => {
    const sentence = 'results[0].value is 230; allowed is 0 to 200 %.';
    const { hand } = show(({ what }) =>
      what.endsWith('/results') ? problem(400, sentence, [{ field: 'results[0].value', sentence }]) : {},
    );
    await hand.type(elongation(), '230');
    await hand.click(button('Save 02'));
    await screen.findByText('Elongation after fracture is 230; allowed is 0 to 200 %.');
    expect(elongation().value).toBe('230');
    await waitFor(() => expect(document.activeElement).toBe(elongation()));
  });

  it('sends nothing while a figure cannot be read, and says which', async () => {
    const { hand, asked } = show();
    await hand.type(elongation(), '2x');
    await hand.click(button('Save 02'));
    await waitFor(() => expect(elongation().getAttribute('aria-invalid')).toBe('true'));
    expect(asked).toEqual([]);
  });

  it('asks why, where a result is typed in place of a kept one', async () => {
    const job = lastWithItsCurve();
    const { key, label, unit } = ELONGATION;
    job.specimens[1]!.results = [{ key, label, unit, value: 23, revision: 1, origin: 'typed', basis: {}, flags: [] }];
    const { hand, asked } = show(() => ({}), job);
    await hand.type(elongation(), '24');
    await hand.click(button('Save 02'));
    expect(asked).toEqual([]);
    await hand.type(screen.getByLabelText(/^Why the result is corrected/), 'Read anew');
    await hand.click(button('Save 02'));
    await waitFor(() => expect(asked.at(-1)?.body).toMatchObject({ why: 'Read anew' }));
  });
});
