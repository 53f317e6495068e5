import type { Method } from '#libs/matching/src/index.js';
import { Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import { PersonEntity } from '../people/person.entity.js';

/** One version of a method. A row is never edited: a change is the next version, and a request keeps the one it was agreed with. */
@Entity('method')
@Unique(['code', 'version'])
export class MethodEntity {
  @PrimaryColumn('uuid')
  id!: string;

  /** The same over all versions, e.g. `iso-527-2`. */
  @Column({ type: 'text' })
  @Index()
  code!: string;

  @Column({ type: 'int' })
  version!: number;

  @Column({ type: 'text' })
  designation!: string;

  @Column({ type: 'text' })
  title!: string;

  @Column({ type: 'text' })
  testType!: string;

  /** The matching core's `Method`, whole. */
  @Column({ type: 'jsonb' })
  data!: Method;

  @Column({ type: 'text', default: 'offered' })
  state!: 'offered' | 'retired';

  @Column({ type: 'uuid', nullable: true })
  @ForeignKey(() => PersonEntity)
  enteredBy!: string | null;

  @Column('timestamptz')
  enteredAt!: Date;
}
