import type { LabSettingsView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiMutation, useApiQuery } from '../../api-client/queries.js';
import { SETTING_GROUPS } from '../../features/register/setting-groups.js';
import { bodyOf, fieldOf, nameOf, problemsOf, typedOf } from '../../features/register/settings-typed.js';
import type { SettingsTyped } from '../../features/register/settings-typed.js';
import { ShiftsForm, ShiftsTable } from '../../features/register/shifts-form.js';
import { rowsOf } from '../../features/register/shift-rows.js';
import { useHasRole } from '../../features/session/session.js';
import { FetchStates } from '../../ui/fetch-states.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { TitleBlock } from '../../ui/title-block.js';
import { useToast } from '../../ui/toasts.js';

/** The lab's own choices. */
export function SettingsScreen() {
  const settings = useApiQuery('settings', api('GET /settings'));
  return (
    <FetchStates of={settings} what="the settings">
      {(value) => <SettingsForm key={value.version} settings={value} />}
    </FetchStates>
  );
}

function SettingsForm({ settings }: { settings: LabSettingsView }) {
  const mayEdit = useHasRole('manager');
  const toast = useToast();
  const save = useApiMutation(['settings', 'plan', 'session']);
  const form: LabForm<SettingsTyped> = useLabForm<SettingsTyped>({
    initial: typedOf(settings),
    check: problemsOf,
    fieldOf: (path) => fieldOf(path, form.hook.getValues('shifts')),
    send: async (typed) => {
      await save.mutateAsync(api('PUT /settings', { body: bodyOf(settings, typed), version: settings.version }));
      toast('The settings are saved. A new plan is on its way.');
    },
  });
  return (
    <>
      <TitleBlock title="Settings" cells={[['version', settings.version]]}>
        {mayEdit && (
          <SubmitButton form={form} disabled={!form.dirty}>
            Save
          </SubmitButton>
        )}
      </TitleBlock>
      <FormFrame form={form} className={ui.stackWide} label="Settings">
        <section className={ui.stack}>
          <h2>The lab</h2>
          <LabFields form={form} />
          {mayEdit ? <ShiftsForm form={form} /> : <ShiftsTable rows={rowsOf(settings.shifts)} />}
        </section>
        {SETTING_GROUPS.map(({ title, lines }) => (
          <section key={title} className={ui.stack}>
            <h2>{title}</h2>
            <div className={ui.fields}>
              {lines.map(({ path, label, unit, help }) => (
                <FormText
                  key={path}
                  form={form}
                  name={nameOf(path)}
                  label={unit ? `${label}, ${unit}` : label}
                  called={label}
                  help={help}
                />
              ))}
            </div>
          </section>
        ))}
      </FormFrame>
    </>
  );
}

function LabFields({ form }: { form: LabForm<SettingsTyped> }) {
  return (
    <div className={ui.fields}>
      <FormText form={form} name={nameOf('name')} label="Name" />
      <FormText form={form} name={nameOf('timeZone')} label="Time zone" help="IANA name, e.g. Europe/London." />
      <FormText form={form} name={nameOf('contact')} label="Contact for readers of reports" />
      <FormText form={form} name={nameOf('address')} label="Address on reports" rows={3} />
    </div>
  );
}
