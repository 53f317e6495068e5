import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { PersonEntity } from '../people/person.entity.js';

/** An address of another program that is told of some kinds of events. */
@Entity('webhook')
export class WebhookEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column({ type: 'text' })
  url!: string;

  @Column({ type: 'text', array: true })
  kinds!: string[];

  /** Signs the deliveries, and therefore cannot be kept as a hash. Shown once; never exported. */
  @Column({ type: 'text', select: false })
  secret!: string;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  addedBy!: string;

  @Column('timestamptz')
  addedAt!: Date;

  /** From then on nothing is delivered; the log stays. */
  @Column({ type: 'timestamptz', nullable: true })
  @Index()
  endedAt!: Date | null;
}
