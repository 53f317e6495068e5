import type { EntityManager } from 'typeorm';
import type { LabSettings } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { updateRows } from '../platform/write-rows.js';
import { LabSettingEntity } from './lab-setting.entity.js';
import { withDefaults } from './lab-settings.js';

/** The settings in force; version 0 while nobody has set any. */
export async function getLabSettings(manager: EntityManager): Promise<{ settings: LabSettings; version: number }> {
  const row = await manager.findOneBy(LabSettingEntity, { id: 1 });
  return { settings: withDefaults(row?.settings), version: row?.version ?? 0 };
}

export async function labSettings(manager: EntityManager): Promise<LabSettings> {
  return (await getLabSettings(manager)).settings;
}

/** @throws {LabError} `settings/changed-meanwhile` when somebody else was quicker */
export async function setLabSettings(
  manager: EntityManager,
  settings: LabSettings,
  version: number,
  changedAt: Date,
): Promise<void> {
  const done =
    version === 0 ? await setFirst(manager, settings, changedAt) : await setNext(manager, settings, version, changedAt);
  if (!done) {
    const { version: found } = await getLabSettings(manager);
    const sentence = 'The settings were changed by someone else. Reload them and try again.';
    throw new LabError('settings/changed-meanwhile', sentence, { version: found });
  }
}

async function setFirst(manager: EntityManager, settings: LabSettings, changedAt: Date): Promise<boolean> {
  const statement =
    'insert into lab_setting (id, settings, version, changed_at) values (1, $1, 1, $2) on conflict do nothing returning id';
  const rows = await manager.query<unknown[]>(statement, [JSON.stringify(settings), changedAt]);
  return rows.length > 0;
}

async function setNext(
  manager: EntityManager,
  settings: LabSettings,
  version: number,
  changedAt: Date,
): Promise<boolean> {
  const changed = await updateRows(
    manager,
    LabSettingEntity,
    { id: 1, version },
    { settings, changedAt, version: version + 1 },
  );
  return changed === 1;
}
