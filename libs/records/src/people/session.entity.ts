import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { PersonEntity } from './person.entity.js';

/** A signed-in browser. The token itself is only in its cookie; here is its SHA-256. */
@Entity('session')
export class SessionEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column({ type: 'text', unique: true })
  tokenHash!: string;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  @Index()
  personId!: string;

  @Column({ type: 'timestamptz', default: () => 'now()' })
  createdAt!: Date;

  @Column({ type: 'timestamptz', default: () => 'now()' })
  seenAt!: Date;

  /** The latest end, however busy it is. */
  @Column({ type: 'timestamptz' })
  expiresAt!: Date;

  @Column({ type: 'timestamptz', nullable: true })
  revokedAt!: Date | null;

  /** What the browser calls itself, cut short, so that people recognise it in the list of their sessions. */
  @Column({ type: 'text', default: '' })
  agent!: string;
}
