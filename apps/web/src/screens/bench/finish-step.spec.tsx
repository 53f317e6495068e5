import { screen, waitFor } from '@testing-library/react';
import type { JobView } from '#libs/contract/src/index.js';
import { example, problem, renderPage } from '#test/support/page-server.js';
import type { Answers } from '#test/support/page-server.js';
import { SendingProvider } from '../../features/bench/sending.js';
import { FinishStep } from './finish-step.js';

const EXAMPLE = example<JobView>('JobView');
const ELONGATION = {
  key: 'elongation-after-fracture',
  label: 'Elongation',
  why: null,
  hint: 'The gauge length is missing.',
};

type Specimen = JobView['specimens'][number];

function job(...specimens: Partial<Specimen>[]): JobView {
  const [one] = EXAMPLE.specimens;
  return {
    ...EXAMPLE,
    id: 'j1',
    reference: 'J-7',
    state: 'running',
    specimens: specimens.map((part, at) => ({
      ...one!,
      ...{ id: `s${at + 1}`, label: `R-2031-0${at + 1}`, fate: 'tested' as const, missing: [] },
      ...part,
    })),
  };
}

const show = (at: JobView, answers: Answers = () => ({})) =>
  renderPage(
    <SendingProvider personId="p1">
      <FinishStep job={at} onBack={() => undefined} />
    </SendingProvider>,
    answers,
  );
const field = (name: string | RegExp) => screen.getByLabelText<HTMLInputElement>(name);
const finish = () => screen.getByRole('button', { name: 'Finish J-7' });

describe('the finish of a job', () => {
  it('says how the room was, and leaves out what nobody typed', async () => {
    const { hand, asked } = show(job({}));
    await hand.type(field('Room temperature, °C'), '23,1');
    await hand.click(finish());
    await waitFor(() => expect(asked).toHaveLength(1));
    expect(asked[0]).toEqual({ what: 'POST /jobs/j1/finish', body: { conditions: { temperatureC: 23.1 } } });
  });

  it('asks why a result that was asked for is missing, and sends the reason for each specimen that lacks it', async () => {
    const { hand, asked } = show(job({}, { missing: [ELONGATION] }, { missing: [ELONGATION] }));
    const why = 'Why there is no Elongation of 02, 03';
    await hand.click(finish());
    await waitFor(() => expect(document.activeElement).toBe(field(why)));
    expect(asked).toEqual([]);
    expect(screen.getByText('The gauge length is missing.')).toBeTruthy();
    await hand.type(field(why), 'Broke in the grip');
    await hand.click(finish());
    await waitFor(() => expect(asked).toHaveLength(1));
    expect(asked[0]!.body).toMatchObject({
      missing: [
        { key: ELONGATION.key, why: 'Broke in the grip', specimenId: 's2' },
        { key: ELONGATION.key, why: 'Broke in the grip', specimenId: 's3' },
      ],
    });
  });

  it('asks nothing about what has its reason', () => {
    show(job({ missing: [{ ...ELONGATION, why: 'No fracture in the gauge length' }] }));
    expect(screen.queryByLabelText(/^Why there is no/)).toBeNull();
  });

  it('asks why specimens are not tested', async () => {
    const { hand, asked } = show(job({}, { fate: 'arrived' }));
    await hand.click(finish());
    await waitFor(() => expect(document.activeElement).toBe(field('Why 1 specimen is not tested')));
    await hand.type(field('Why 1 specimen is not tested'), 'Dropped');
    await hand.click(finish());
    await waitFor(() => expect(asked[0]?.body).toEqual({ notTestedWhy: 'Dropped', conditions: {} }));
  });

  it.each([
    ['-200', true],
    ['-201', false],
    ['1200', true],
    ['1201', false],
    ['warm', false],
  ])('takes %p °C: %p', async (text, isTaken) => {
    const { hand, asked } = show(job({}));
    await hand.type(field('Room temperature, °C'), text);
    await hand.click(finish());
    await waitFor(() => expect(asked.length + document.querySelectorAll('[aria-invalid=true]').length).toBe(1));
    expect(asked).toHaveLength(isTaken ? 1 : 0);
  });

  it('shows at the head what the server refuses, and keeps what was typed', async () => {
    const detail = 'Results of J-7 that were asked for are missing: R-2031-01 (Elongation).';
    const { hand } = show(job({}), ({ what }) => (what.startsWith('POST') ? problem(409, detail) : {}));
    await hand.type(field(/^Remarks/), 'Dusty');
    await hand.click(finish());
    expect((await screen.findByRole('alert')).textContent).toBe(detail);
    expect(field(/^Remarks/).value).toBe('Dusty');
  });
});
