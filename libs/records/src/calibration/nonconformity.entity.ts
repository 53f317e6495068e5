import type { ImpactView, PersonRef } from '#libs/contract/src/index.js';
import { Column, Entity, ForeignKey, Index, PrimaryColumn, VersionColumn } from 'typeorm';
import { ItemEntity } from '../register/item.entity.js';
import { PersonEntity } from '../people/person.entity.js';

/** What an item touched since it was last found good. */
interface Touched {
  jobs: Pick<ImpactView['jobs'][number], 'id' | 'reference'>[];
  reports: Pick<ImpactView['reports'][number], 'id' | 'number' | 'revision'>[];
  people: PersonRef[];
  /** When it was put right, or now. */
  until?: string;
}

/** Work or an item found not to conform, with what it touched at the time it was opened. */
@Entity('nonconformity')
export class NonconformityEntity {
  @PrimaryColumn('uuid')
  id!: string;

  /** E.g. `NC-0007`. */
  @Column({ type: 'text', unique: true })
  reference!: string;

  @Column({ type: 'uuid', nullable: true })
  @ForeignKey(() => ItemEntity)
  @Index()
  itemId!: string | null;

  @Column({ type: 'text' })
  what!: string;

  @Column({ type: 'timestamptz' })
  since!: Date;

  @Column({ type: 'jsonb' })
  touched!: Touched;

  @Column({ type: 'text', default: 'open' })
  state!: 'open' | 'closed';

  @Column({ type: 'text', nullable: true })
  decision!: string | null;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  openedBy!: string;

  @Column('timestamptz')
  openedAt!: Date;

  @Column({ type: 'timestamptz', nullable: true })
  closedAt!: Date | null;

  @VersionColumn()
  version!: number;
}
