import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { ItemEntity } from './item.entity.js';

/** What is fitted on a frame right now, one row an item. An item is on one frame at a time: it is the key. */
@Entity('rig_link')
export class RigLinkEntity {
  @PrimaryColumn('uuid')
  @ForeignKey(() => ItemEntity)
  itemId!: string;

  @Column('uuid')
  @ForeignKey(() => ItemEntity)
  @Index()
  frameId!: string;

  /** The place in the load train, e.g. `load-cell`, `upper-grip`. */
  @Column({ type: 'text' })
  role!: string;

  @Column('timestamptz')
  fittedAt!: Date;
}
