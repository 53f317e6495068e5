import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { PersonEntity } from '../people/person.entity.js';

/** Opens calendar feeds, and nothing else, to a calendar program that cannot sign in. Shown once; here is its SHA-256. */
@Entity('feed_key')
export class FeedKeyEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  @Index()
  personId!: string;

  @Column({ type: 'text' })
  name!: string;

  @Column({ type: 'text', unique: true, select: false })
  keyHash!: string;

  @Column('timestamptz')
  madeAt!: Date;

  @Column({ type: 'timestamptz', nullable: true })
  usedAt!: Date | null;

  @Column({ type: 'timestamptz', nullable: true })
  revokedAt!: Date | null;
}
