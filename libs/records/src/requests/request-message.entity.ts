import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { PersonEntity } from '../people/person.entity.js';
import { RequestEntity } from './request.entity.js';

/** A message on a request, by requester, manager or technician; kept with the review. */
@Entity('request_message')
export class RequestMessageEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => RequestEntity)
  @Index()
  requestId!: string;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  authorId!: string;

  @Column({ type: 'text' })
  body!: string;

  @Column('timestamptz')
  at!: Date;
}
