import { Check, Column, Entity, PrimaryColumn, VersionColumn } from 'typeorm';
import type { MailWay, Role } from '#libs/contract/src/index.js';

/** Somebody who works with the lab. Never deleted: the record names people; who left is no longer active. */
@Entity('person')
@Check('person_email_lower_case', `"email" = lower("email")`)
@Check('person_roles_known', `"roles" <@ array['requester', 'technician', 'manager', 'auditor']`)
export class PersonEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column({ type: 'text' })
  name!: string;

  /** What people sign in with, in lower case. */
  @Column({ type: 'text', unique: true })
  email!: string;

  /** argon2id; null for those who come by single sign-on only. */
  @Column({ type: 'text', nullable: true, select: false })
  passwordHash!: string | null;

  /** The subject at the single sign-on provider, once it was seen. */
  @Column({ type: 'text', nullable: true, unique: true, select: false })
  signOnSubject!: string | null;

  @Column({ type: 'text', array: true })
  roles!: Role[];

  @Column({ type: 'boolean', default: true })
  active!: boolean;

  /** Which notices this person wants, and how often. */
  @Column({ type: 'jsonb', default: {} })
  notices!: { mail?: MailWay };

  @Column('timestamptz')
  createdAt!: Date;

  @VersionColumn()
  version!: number;
}
