import type { Clock } from '#libs/calendar/src/index.js';
import type { DataSource, EntityManager } from 'typeorm';
import { tellPeople } from './notices/tell-people.js';
import { act, quietly, snapshot } from './record/act.js';
import type { Act, EventListener, Stage } from './record/act.js';
import { tellPrograms } from './webhooks/tell-programs.js';

/** Who hears of every event of the record. */
const LISTENERS: readonly EventListener[] = [tellPeople, tellPrograms];

/** The lab's records as an application holds them: to read, and the only ways to change. */
export class LabRecords implements Stage {
  readonly listeners = LISTENERS;

  constructor(
    readonly source: DataSource,
    readonly clock: Clock,
  ) {}

  /** For reads that need no common moment. */
  get manager(): EntityManager {
    return this.source.manager;
  }

  /** See {@link act}. */
  act<Answer>(byId: string | null, change: (act: Act) => Promise<Answer>): Promise<Answer> {
    return act(this, byId, change);
  }

  /** See {@link quietly}. */
  quietly<Answer>(change: (manager: EntityManager) => Promise<Answer>): Promise<Answer> {
    return quietly(this, change);
  }

  /** See {@link snapshot}. */
  snapshot<Answer>(read: (manager: EntityManager) => Promise<Answer>): Promise<Answer> {
    return snapshot(this, read);
  }
}
