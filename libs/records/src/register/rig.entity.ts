import { Column, Entity, Index, PrimaryColumn } from 'typeorm';

/** What is fitted on a frame right now, one row an item. An item is on one frame at a time: it is the key. */
@Entity('rig_link')
export class RigLinkEntity {
  @PrimaryColumn('uuid')
  itemId!: string;

  @Column('uuid')
  @Index()
  frameId!: string;

  /** The place in the load train, e.g. `load-cell`, `upper-grip`. */
  @Column({ type: 'text' })
  role!: string;

  @Column({ type: 'timestamptz', default: () => 'now()' })
  fittedAt!: Date;
}
