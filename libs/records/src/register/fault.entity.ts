import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { ItemEntity } from './item.entity.js';
import { PersonEntity } from '../people/person.entity.js';

/** A fault reported on an item; while `closedAt` is null the item may not be used. */
@Entity('fault')
export class FaultEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => ItemEntity)
  @Index()
  itemId!: string;

  @Column({ type: 'text' })
  what!: string;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  openedBy!: string;

  @Column('timestamptz')
  openedAt!: Date;

  @Column({ type: 'uuid', nullable: true })
  @ForeignKey(() => PersonEntity)
  closedBy!: string | null;

  @Column({ type: 'timestamptz', nullable: true })
  closedAt!: Date | null;

  @Column({ type: 'text', nullable: true })
  remedy!: string | null;
}
