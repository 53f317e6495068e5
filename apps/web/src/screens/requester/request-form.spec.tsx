import { screen, waitFor } from '@testing-library/react';
import type { MaterialView, MethodView, RequestView, SessionView } from '#libs/contract/src/index.js';
import { METHODS } from '#seed/library/methods.js';
import { example, problem, renderPage } from '#test/support/page-server.js';
import type { Answers } from '#test/support/page-server.js';
import { SessionProvider } from '../../features/session/session.js';
import { momentsIn } from '../../ui/moments.js';
import { MomentsProvider } from '../../ui/use-moments.js';
import { RequestForm } from './request-form.js';

const SESSION = example<SessionView>('SessionView');
const REQUEST = example<RequestView>('RequestView');
const MATERIALS = [example<MaterialView>('MaterialView')];
const METHOD = METHODS.find(({ id }) => id === 'iso-178')!;
const METHOD_VIEW: MethodView = {
  ...{ id: 'm1', code: METHOD.id, version: 1, state: 'offered', data: METHOD },
  ...{ designation: METHOD.designation, title: METHOD.title, testType: METHOD.testType },
};
const TEAMS = [{ id: 't1', name: 'Frames' }];

function show(answers: Answers) {
  return renderPage(
    <SessionProvider value={{ ...SESSION, person: { ...SESSION.person, teams: TEAMS } }}>
      <MomentsProvider value={momentsIn('Europe/Berlin')}>
        <RequestForm methods={[METHOD_VIEW]} materials={MATERIALS} teams={TEAMS} />
      </MomentsProvider>
    </SessionProvider>,
    answers,
  );
}
const field = (name: string | RegExp) => screen.getByLabelText<HTMLInputElement>(name);
const button = (name: string) => screen.getByRole('button', { name });
const sent = (asked: { what: string }[]) => asked.filter(({ what }) => /requests/.test(what));

describe('the request form', () => {
  beforeEach(() => history.replaceState(null, '', '/requests/new'));

  it('sends nothing without a title, and says so at the title', async () => {
    const { hand, asked } = show(() => ({}));
    await hand.click(button('Submit to the lab'));
    await waitFor(() => expect(document.activeElement).toBe(field('What do you want to find out?')));
    expect(sent(asked)).toEqual([]);
  });

  it('keeps a draft whose day is over, and submits none', async () => {
    const { hand, asked } = show(() => REQUEST);
    await hand.type(field('What do you want to find out?'), 'Lot 7');
    await hand.type(field(/^Due/), '2020-01-06');
    await hand.click(button('Submit to the lab'));
    await screen.findByText('This day is over. Choose one that is still to come, or none.');
    expect(sent(asked)).toEqual([]);
    await hand.click(button('Save as draft'));
    await waitFor(() => expect(location.pathname).toBe(`/requests/${REQUEST.id}`));
    expect(sent(asked)).toHaveLength(1);
  });

  it('shows what the server refuses beside the field that it names, and keeps all that was typed', async () => {
    const sentence = 'dueAt is missing; allowed is a day.';
    const { hand } = show(() => problem(400, sentence, [{ field: 'dueAt', sentence }]));
    await hand.type(field('What do you want to find out?'), 'Lot 7');
    await hand.click(button('Save as draft'));
    await screen.findByText('The due date is missing; allowed is a day.');
    expect(field('What do you want to find out?').value).toBe('Lot 7');
  });

  it('tells a count of specimens that is refused once, at its field', async () => {
    const sentence = 'batches[0].specimenCount is 0; allowed is a whole number of at least 1.';
    const { hand, asked } = show(() => problem(400, sentence, [{ field: 'batches[0].specimenCount', sentence }]));
    await hand.type(field('What do you want to find out?'), 'Lot 7');
    await hand.selectOptions(field('Method'), 'm1');
    await hand.clear(field('Specimens'));
    await hand.type(field('Specimens'), '0');
    await hand.click(button('Save as draft'));
    await waitFor(() => expect(document.activeElement?.getAttribute('aria-invalid')).toBe('true'));
    expect(sent(asked).filter(({ what }) => what.startsWith('POST'))).toHaveLength(1);
    expect(field('Specimens').getAttribute('aria-invalid')).toBe('true');
    expect(screen.queryByRole('alert')).toBeNull();
  });

  it('asks for limits that can be read, where conformity is asked for', async () => {
    const { hand, asked } = show(() => ({}));
    await hand.type(field('What do you want to find out?'), 'Lot 7');
    await hand.click(field('State whether they conform to a specification'));
    await hand.type(field(/^At least/), '8 %');
    await hand.click(button('Save as draft'));
    await screen.findByText('Name the specification.');
    expect(field(/^At least/).getAttribute('aria-invalid')).toBe('true');
    expect(sent(asked)).toEqual([]);
  });

  it('goes on to the draft when it is kept and cannot be submitted, and takes the reason along', async () => {
    const refusal = problem(409, 'It has no batch.');
    const { hand } = show(({ what }) => (what.endsWith('/submit') ? refusal : REQUEST));
    await hand.type(field('What do you want to find out?'), 'Lot 7');
    await hand.click(button('Submit to the lab'));
    await waitFor(() => expect(location.pathname).toBe(`/requests/${REQUEST.id}/edit`));
    expect(history.state).toEqual({ refused: refusal });
  });

  it('says at its head, once, what kept the request that it was before from being submitted', async () => {
    history.replaceState({ refused: problem(409, 'It has no batch.') }, '', '/requests/r1/edit');
    show(() => ({}));
    expect((await screen.findByRole('alert')).textContent).toBe('It has no batch.');
    expect(history.state).toBeNull();
  });

  it('finds again after a reload what was typed, batches too', async () => {
    const { hand, unmount } = show(() => ({}));
    await hand.type(field('What do you want to find out?'), 'Lot 7');
    await hand.selectOptions(field('Method'), 'm1');

    await hand.clear(field('Width'));
    await hand.type(field('Width'), '12');
    unmount();
    show(() => ({}));
    expect(field('What do you want to find out?').value).toBe('Lot 7');
    expect(field('Width').value).toBe('12');
  });
});
