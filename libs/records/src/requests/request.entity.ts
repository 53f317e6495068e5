import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, VersionColumn } from 'typeorm';
import type { ConformityAsk, RequestState, ReviewBody } from '#libs/contract/src/index.js';
import { PersonEntity } from '../people/person.entity.js';
import { TeamEntity } from '../people/team.entity.js';

/** A review with who settled it, and when. */
export type SettledReview = ReviewBody & { byId: string; at: string };

/** What a team asks for: method, material, specimens, conditions, due date, why. */
@Entity('request')
@Index(['createdAt', 'id'])
@Index(['teamId', 'createdAt', 'id'])
@Index(['state', 'createdAt', 'id'])
@Index('ix_request_reference_words', { synchronize: false }) // made by a step of its own: TypeORM knows no trigrams
@Index('ix_request_title_words', { synchronize: false })
@Index(['teamId', 'importedAs'], { unique: true, where: '"imported_as" is not null' })
@Check('request_weight_positive', '"weight" > 0')
export class RequestEntity {
  @PrimaryColumn('uuid')
  id!: string;

  /** What people say aloud and write on the specimen bag, e.g. `R-2031`. Never reused. */
  @Column({ type: 'text', unique: true })
  reference!: string;

  /** What the file called it that it came with, such as its number in another program. */
  @Column({ type: 'text', nullable: true })
  importedAs!: string | null;

  @Column({ type: 'text' })
  title!: string;

  /** What the team wants to find out. */
  @Column({ type: 'text', default: '' })
  purpose!: string;

  @Column({ type: 'text' })
  state!: RequestState;

  @Column('uuid')
  @ForeignKey(() => TeamEntity)
  teamId!: string;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  @Index()
  requesterId!: string;

  @Column({ type: 'timestamptz', nullable: true })
  dueAt!: Date | null;

  /** When the team will hand the specimens over; null when nobody has said. */
  @Column({ type: 'timestamptz', nullable: true })
  specimensAt!: Date | null;

  /** How much an hour of lateness counts beside other requests; 1 is ordinary. */
  @Column({ type: 'double precision', default: 1 })
  weight!: number;

  /** What happens to the tested pieces. */
  @Column({ type: 'text', default: 'keep-90-days' })
  disposal!: 'return' | 'keep-90-days' | 'discard';

  /** Specification to state conformity with, and the decision rule; null when none is asked for. */
  @Column({ type: 'jsonb', nullable: true })
  conformity!: ConformityAsk | null;

  /** The review of the request by the points of ISO/IEC 17025:2017 7.1, with who and when. */
  @Column({ type: 'jsonb', nullable: true })
  review!: SettledReview | null;

  @Column('timestamptz')
  createdAt!: Date;

  @Column({ type: 'timestamptz', nullable: true })
  submittedAt!: Date | null;

  @Column({ type: 'timestamptz', nullable: true })
  acceptedAt!: Date | null;

  /** The date given to the requester, with the chance that it holds. */
  @Column({ type: 'timestamptz', nullable: true })
  promise50At!: Date | null;

  @Column({ type: 'timestamptz', nullable: true })
  promise80At!: Date | null;

  /** Why the promise moved last, in words. */
  @Column({ type: 'text', nullable: true })
  promiseNote!: string | null;

  @VersionColumn()
  version!: number;
}
