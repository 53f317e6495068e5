import { clsx } from 'clsx';
import { useState } from 'react';
import { useFieldArray, useWatch } from 'react-hook-form';
import { linkWords } from '#libs/contract/src/index.js';
import type { ItemView, RigView } from '#libs/contract/src/index.js';
import { Dialog } from '../../ui/dialog.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormSelect } from '../../ui/form/form-select.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { useToast } from '../../ui/toasts.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { ItemPicker } from './item-picker.js';
import { fromTheTop, placeProblems, PLACES, usualPlace } from './rig-places.js';
import { ui } from '../../ui/styles.js';

type Fitted = Pick<RigView['links'][number], 'role' | 'itemId' | 'tag' | 'name'>;

interface RigTyped {
  links: Fitted[];
}

/** Says what is on a frame, as somebody found it. */
export function RigDialog({ rig, onClose }: { rig: RigView; onClose: () => void }) {
  const { frame } = rig;
  const form = useRigForm(rig, onClose);
  const { fields, append, remove } = useFieldArray({ control: form.control, name: 'links' });
  const links = useWatch({ control: form.control, name: 'links' });
  const wrong = placeProblems(links);
  const add = ({ id, kind, tag, name }: ItemView) => {
    const taken = links.map(({ role }) => role);
    append({ role: usualPlace(kind, taken), itemId: id, tag, name });
  };
  return (
    <Dialog title={`What is on ${frame.tag}`} onClose={onClose} wide>
      <FormFrame form={form} label={`Items on ${frame.tag}`}>
        {fields.length === 0 && <p className={ui.soft}>Nothing is on it.</p>}
        {fields.map(({ id, ...link }, at) => (
          <FittedLink key={id} form={form} link={link} at={at} wrong={wrong[at]} onTakeOff={() => remove(at)} />
        ))}
      </FormFrame>
      <ItemPicker without={links.map(({ itemId }) => itemId)} frameTag={frame.tag} onPick={add} />
      <div>
        <SubmitButton form={form}>Save this for {frame.tag} and replan</SubmitButton>
      </div>
    </Dialog>
  );
}

/** The list behind may learn of another rig meanwhile; what is typed stays with the version that was seen. */
function useRigForm({ frame, version, links }: RigView, onClose: () => void): LabForm<RigTyped> {
  const toast = useToast();
  const [seen] = useState({ version, start: { links: fromTheTop(links) } });
  const save = useApiMutation(['items', 'plan', 'jobs']);
  return useLabForm<RigTyped>({
    initial: seen.start,
    check: (typed) =>
      Object.fromEntries(placeProblems(typed.links).map((sentence, at) => [`links.${at}.role`, sentence])),
    fieldOf: (path) => path.replace(/\.itemId$/, '.role'),
    send: async (typed) => {
      const body = { links: typed.links.map(({ role, itemId }) => ({ role, itemId })) };
      await save.mutateAsync(api('PUT /rigs/{frameId}', { frameId: frame.id, version: seen.version, body }));
      toast(`What is on ${frame.tag} is saved. A new plan is on its way.`);
      onClose();
    },
  });
}

interface LinkProps {
  form: LabForm<RigTyped>;
  link: Fitted;
  at: number;
  wrong: string | undefined;
  onTakeOff: () => void;
}

/** An item on the frame: its place, and the way to take it off. */
function FittedLink({ form, link, at, wrong, onTakeOff }: LinkProps) {
  return (
    <div className={ui.rowBetween}>
      <div>
        <strong className={ui.fig}>{link.tag}</strong>
        <br />
        <span className={clsx(ui.small, ui.soft)}>{link.name}</span>
      </div>
      <div className={ui.row}>
        <FormSelect
          form={form}
          name={`links.${at}.role`}
          label={`Place of ${link.tag}`}
          choices={choicesFor(link.role)}
          remark={wrong}
        />
        <button type="button" className={ui.buttonSmall} aria-label={`Take ${link.tag} off`} onClick={onTakeOff}>
          Take off
        </button>
      </div>
    </div>
  );
}

function choicesFor(role: string) {
  const known = PLACES.some((place) => place === role) ? PLACES : [role, ...PLACES];
  return known.map((value) => ({ value, label: linkWords(value) }));
}
