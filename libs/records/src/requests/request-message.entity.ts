import { Column, Entity, Index, PrimaryColumn } from 'typeorm';

/** A message on a request, by requester, manager or technician; kept with the review. */
@Entity('request_message')
export class RequestMessageEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @Index()
  requestId!: string;

  @Column('uuid')
  authorId!: string;

  @Column({ type: 'text' })
  body!: string;

  @Column({ type: 'timestamptz', default: () => 'now()' })
  at!: Date;
}
