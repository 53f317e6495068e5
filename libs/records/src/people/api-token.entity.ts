import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { PersonEntity } from './person.entity.js';

/** Lets a program act for a person, within the permissions named. The token is shown once; here is its SHA-256. */
@Entity('api_token')
export class ApiTokenEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  @Index()
  personId!: string;

  @Column({ type: 'text' })
  name!: string;

  @Column({ type: 'text', unique: true })
  tokenHash!: string;

  @Column({ type: 'text', array: true })
  permissions!: string[];

  @Column({ type: 'timestamptz', default: () => 'now()' })
  createdAt!: Date;

  @Column({ type: 'timestamptz' })
  expiresAt!: Date;

  @Column({ type: 'timestamptz', nullable: true })
  usedAt!: Date | null;

  @Column({ type: 'timestamptz', nullable: true })
  revokedAt!: Date | null;
}
