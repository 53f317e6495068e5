import type { TrialEdit } from '#libs/contract/src/index.js';
import { Column, Entity, ForeignKey, PrimaryColumn } from 'typeorm';
import { PersonEntity } from '../people/person.entity.js';
import { PlanEntity } from './plan.entity.js';
import type { TrialOutcome } from './trial-outcome.js';

/** A what-if copy of the plan with its edits, compared and then published or dropped. */
@Entity('trial_plan')
export class TrialPlanEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column({ type: 'text' })
  name!: string;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  ownerId!: string;

  @Column('uuid')
  @ForeignKey(() => PlanEntity)
  basedOnPlanId!: string;

  @Column({ type: 'text', default: '' })
  factsStamp!: string;

  @Column({ type: 'jsonb' })
  edits!: TrialEdit[];

  /** The replanned bookings and the comparison with the published plan; null while computing. */
  @Column({ type: 'jsonb', nullable: true })
  outcome!: TrialOutcome | null;

  @Column({ type: 'text', default: 'open' })
  state!: 'open' | 'published' | 'dropped';

  @Column('timestamptz')
  createdAt!: Date;

  @Column({ type: 'int', default: 1 })
  version!: number;
}
