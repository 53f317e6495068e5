import { clsx } from 'clsx';
import { useState } from 'react';
import { useWatch } from 'react-hook-form';
import { useLocation } from 'wouter';
import type { RequestView, ReviewBody } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { limitsText } from '../../features/requests/limits-text.js';
import { DISPOSALS } from '../../features/requests/words.js';
import { useHasRole } from '../../features/session/session.js';
import { Dialog } from '../../ui/dialog.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import { FormTick } from '../../ui/form/form-ticks.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { useToast } from '../../ui/toasts.js';
import { useMoments } from '../../ui/use-moments.js';

type ReviewTyped = Record<Point, boolean> & { differences: string; note: string };

const NOTHING_SETTLED: ReviewTyped = {
  methodAgreed: false,
  capabilityShown: false,
  specimensAgreed: false,
  disposalAgreed: false,
  decisionRuleAgreed: false,
  differences: '',
  note: '',
};

/** The points to settle before a request is accepted; for one that was reviewed, who did it when. */
export function Review({ request }: { request: RequestView }) {
  const { moment } = useMoments();
  const mayReview = useHasRole('manager') && request.state === 'submitted';
  if (mayReview) return <ReviewForm request={request} />;
  if (!request.review) return null;
  return (
    <p className={ui.note}>
      Reviewed by {request.review.by.name}, {moment(request.review.at)}.
    </p>
  );
}

function ReviewForm({ request }: { request: RequestView }) {
  const toast = useToast();
  const [, go] = useLocation();
  const accept = useApiMutation(['requests', 'plan']);
  const points = pointsOf(request);
  const openOf = (typed: Partial<ReviewTyped>) => points.filter(({ key }) => !typed[key]).length;
  const form = useLabForm<ReviewTyped>({
    initial: NOTHING_SETTLED,
    check: (typed): Record<string, string> =>
      openOf(typed) > 0 ? { points: 'Tick every point that is settled, or return the request with a question.' } : {},
    send: async (typed) => {
      await accept.mutateAsync(api('POST /requests/{id}/accept', { id: request.id, body: bodyOf(typed, request) }));
      toast(`${request.reference} is accepted. Its jobs go into the next plan.`);
      go('/planning/intake');
    },
  });
  const open = openOf(useWatch({ control: form.control }));
  return (
    <section className={clsx(ui.stack, ui.framed)}>
      <h2>Review</h2>
      <FormFrame form={form} label="Review">
        <p className={clsx(ui.small, ui.soft)}>
          Points of ISO/IEC 17025:2017, 7.1. Each must be settled before the request is accepted.
        </p>
        <div className={ui.stackTight}>
          {points.map(({ key, label }) => (
            <FormTick key={key} form={form} name={key} label={label} />
          ))}
        </div>
        <FormText
          form={form}
          name="differences"
          label="Differences, and how they were settled"
          required={false}
          rows={2}
        />
        <FormText form={form} name="note" label="Note for the bench" required={false} rows={2} />
      </FormFrame>
      <div className={ui.row}>
        <SubmitButton form={form}>Accept</SubmitButton>
        <OtherAnswers request={request} />
        {open > 0 && (
          <span className={clsx(ui.soft, ui.small)}>
            {open === 1 ? 'one point is open' : `${open} points are open`}
          </span>
        )}
      </div>
    </section>
  );
}

function OtherAnswers({ request }: { request: RequestView }) {
  const [saying, setSaying] = useState<'return' | 'decline' | null>(null);
  return (
    <>
      <button type="button" className={ui.button} onClick={() => setSaying('return')}>
        Return with a question …
      </button>
      <button type="button" className={ui.buttonSharp} onClick={() => setSaying('decline')}>
        Decline …
      </button>
      {saying && <SayWhy request={request} how={saying} onClose={() => setSaying(null)} />}
    </>
  );
}

function bodyOf({ decisionRuleAgreed, ...rest }: ReviewTyped, request: RequestView): ReviewBody {
  return request.conformity ? { ...rest, decisionRuleAgreed } : rest;
}

type Point = 'methodAgreed' | 'capabilityShown' | 'specimensAgreed' | 'disposalAgreed' | 'decisionRuleAgreed';

function pointsOf(request: RequestView): { key: Point; label: string }[] {
  const methods = [
    ...new Set(request.batches.map(({ method }) => `${method.designation} (version ${method.version})`)),
  ].join(', ');
  const disposal = DISPOSALS.find(({ value }) => value === request.disposal)?.label.toLowerCase() ?? '';
  const points: { key: Point; label: string }[] = [
    { key: 'methodAgreed', label: `The method suits what they want to find out: ${methods}` },
    { key: 'capabilityShown', label: 'The lab can do it: at least one load train for every batch' },
    { key: 'specimensAgreed', label: `Specimens agreed: ${request.specimens}, their number, shape and condition` },
    { key: 'disposalAgreed', label: `Afterwards: ${disposal}` },
  ];
  if (request.conformity)
    points.push({
      key: 'decisionRuleAgreed',
      label: `Specification and decision rule agreed: ${limitsText(request.conformity)}`,
    });
  return points;
}

const WORDS = {
  return: {
    title: (reference: string) => `Return ${reference} with a question`,
    explain: 'The requester answers, changes the request if needed, and submits it again.',
    label: 'Question',
    needed: 'Ask the question.',
    button: 'Return it',
  },
  decline: {
    title: (reference: string) => `Decline ${reference}`,
    explain: 'The request ends here; this cannot be taken back. The requester sees the reason and can make a copy.',
    label: 'Reason',
    needed: 'Give the reason.',
    button: 'Decline it for good',
  },
};

function SayWhy({ request, how, onClose }: { request: RequestView; how: 'return' | 'decline'; onClose: () => void }) {
  const [, go] = useLocation();
  const { title, explain, label, needed, button } = WORDS[how];
  const answer = useApiMutation(['requests'], () => go('/planning/intake'));
  const form = useLabForm({
    initial: { why: '' },
    send: (body) => answer.mutateAsync(api(`POST /requests/{id}/${how}`, { id: request.id, body })),
  });
  return (
    <Dialog title={title(request.reference)} onClose={onClose}>
      <FormFrame form={form}>
        <p>{explain}</p>
        <FormText form={form} name="why" label={label} rows={3} needed={needed} />
        <div>
          <SubmitButton form={form} className={how === 'return' ? ui.buttonMain : ui.buttonSharp}>
            {button}
          </SubmitButton>
        </div>
      </FormFrame>
    </Dialog>
  );
}
