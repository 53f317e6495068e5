import { Column, Entity, Index, PrimaryGeneratedColumn } from 'typeorm';

/** A try to sign in, kept as long as it counts towards the limit. Shared by all API processes. */
@Entity('sign_in_attempt')
@Index(['subject', 'at'])
export class SignInAttemptEntity {
  @PrimaryGeneratedColumn('identity', { type: 'bigint' })
  id!: string;

  /** SHA-256 of the address typed, or of the network address it came from. */
  @Column({ type: 'text' })
  subject!: string;

  @Column({ type: 'timestamptz', default: () => 'now()' })
  at!: Date;
}
