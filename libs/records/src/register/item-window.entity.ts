import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { ItemEntity } from './item.entity.js';

/**
 * A span in which an item cannot be used: a frame that is down, an item lent out or away for calibration. An extra shift
 * is the other way round: a frame is worked outside of the lab's hours.
 */
@Entity('item_window')
@Check('item_window_has_length', '"ends_at" > "starts_at"')
export class ItemWindowEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => ItemEntity)
  @Index()
  itemId!: string;

  @Column({ type: 'text' })
  kind!: 'down' | 'held' | 'calibration-visit' | 'extra-shift';

  @Column({ type: 'timestamptz' })
  startsAt!: Date;

  @Column({ type: 'timestamptz' })
  endsAt!: Date;

  @Column({ type: 'text', default: '' })
  why!: string;
}
