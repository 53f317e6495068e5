import { Body, Controller, Get, Put } from '@nestjs/common';
import type { LabSettingsView } from '#libs/contract/src/index.js';
import { refuseIfAny } from '#libs/errors/src/index.js';
import { DEFAULT_LAB_SETTINGS, getLabSettings, LabRecords, setLabSettings } from '#libs/records/src/index.js';
import { By } from '../platform/by.js';
import { IfMatch } from '../platform/if-match.js';
import { May } from '../platform/may.js';
import type { SignedIn } from '../platform/signed-in.js';
import { figureProblems } from './check-figures.js';
import { LabSettingsDto } from './settings.dto.js';

@Controller('settings')
export class SettingsController {
  constructor(private readonly records: LabRecords) {}

  @Get()
  @May('see-settings')
  async view(): Promise<LabSettingsView> {
    const { settings, version } = await getLabSettings(this.records.manager);
    return { ...settings, version };
  }

  /** Replaces the settings as a whole; the plan is made anew. */
  @Put()
  @May('edit-settings')
  async set(@IfMatch() version: number, @Body() body: LabSettingsDto, @By() by: SignedIn): Promise<LabSettingsView> {
    const { matching, objective } = DEFAULT_LAB_SETTINGS;
    refuseIfAny([
      ...figureProblems('matching', body.matching, matching),
      ...figureProblems('objective', body.objective, objective),
    ]);
    await this.records.act(by.id, async ({ manager, record, now }) => {
      const { settings: before } = await getLabSettings(manager);
      const shifts = body.shifts.map((shift) => ({ ...shift }));
      const after = { ...body, shifts, retention: { ...body.retention }, demo: before.demo };
      await setLabSettings(manager, after, version, now());
      const told = { before: { ...before }, after: { ...after } };
      await record({
        kind: 'settings/changed',
        subjectId: 'lab',
        ...told,
      });
    });
    return this.view();
  }
}
