import { Column, Entity, ForeignKey, Index, PrimaryColumn, VersionColumn } from 'typeorm';
import { ItemEntity } from '../register/item.entity.js';
import { PersonEntity } from '../people/person.entity.js';

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

  /** Ids and references of jobs, results, reports and people touched. */
  @Column({ type: 'jsonb' })
  touched!: Record<string, unknown>;

  @Column({ type: 'text', default: 'open' })
  state!: 'open' | 'closed';

  @Column({ type: 'text', nullable: true })
  decision!: string | null;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  openedBy!: string;

  @Column({ type: 'timestamptz', default: () => 'now()' })
  openedAt!: Date;

  @Column({ type: 'timestamptz', nullable: true })
  closedAt!: Date | null;

  @VersionColumn()
  version!: number;
}
