import { Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import { PersonEntity } from '../people/person.entity.js';

/** One thing that one person is told. Written with what it tells of, in one transaction; forgotten after a while. */
@Entity('notice')
@Unique(['personId', 'key'])
@Index(['personId', 'at', 'id'])
@Index('ix_notice_unread', ['personId'], { where: '"read_at" is null' })
export class NoticeEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  personId!: string;

  /** What it tells of; nobody is told of the same twice. */
  @Column({ type: 'text' })
  key!: string;

  @Column({ type: 'text' })
  kind!: string;

  /** Where to look, below the address of the page. */
  @Column({ type: 'text' })
  path!: string;

  @Column({ type: 'text' })
  subject!: string;

  @Column({ type: 'text' })
  sentence!: string;

  @Column('timestamptz')
  @Index()
  at!: Date;

  @Column({ type: 'timestamptz', nullable: true })
  readAt!: Date | null;

  @Column({ type: 'timestamptz', nullable: true })
  mailedAt!: Date | null;

  @Column({ type: 'int', default: 0 })
  mailTries!: number;

  /** Why it has not been mailed, without addresses. */
  @Column({ type: 'text', nullable: true })
  mailTrouble!: string | null;
}
