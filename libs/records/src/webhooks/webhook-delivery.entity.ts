import type { DeliveryState } from '#libs/contract/src/index.js';
import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn, Unique } from 'typeorm';
import { WebhookEntity } from './webhook.entity.js';

/** One event on its way to one address, and how that went. */
@Entity('webhook_delivery')
@Unique(['webhookId', 'eventId'])
@Index(['webhookId', 'announcedAt'])
@Check('webhook_delivery_state_known', `"state" in ('waiting', 'delivered', 'failed')`)
export class WebhookDeliveryEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => WebhookEntity)
  webhookId!: string;

  /** Of the record; or of a try, which is in no record. */
  @Column('uuid')
  eventId!: string;

  @Column({ type: 'text' })
  kind!: string;

  /** The very text that is sent and signed. */
  @Column({ type: 'text' })
  body!: string;

  @Column({ type: 'text', default: 'waiting' })
  state!: DeliveryState;

  @Column({ type: 'int', default: 0 })
  tries!: number;

  @Column('timestamptz')
  @Index()
  announcedAt!: Date;

  @Column({ type: 'int', nullable: true })
  lastStatus!: number | null;

  @Column({ type: 'text', nullable: true })
  trouble!: string | null;

  @Column({ type: 'timestamptz', nullable: true })
  nextTryAt!: Date | null;

  @Column({ type: 'timestamptz', nullable: true })
  deliveredAt!: Date | null;
}
