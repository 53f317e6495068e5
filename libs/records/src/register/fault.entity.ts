import { Column, Entity, Index, PrimaryColumn } from 'typeorm';

/** A fault reported on an item; while `closedAt` is null the item may not be used. */
@Entity('fault')
export class FaultEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @Index()
  itemId!: string;

  @Column({ type: 'text' })
  what!: string;

  @Column('uuid')
  openedBy!: string;

  @Column({ type: 'timestamptz', default: () => 'now()' })
  openedAt!: Date;

  @Column({ type: 'uuid', nullable: true })
  closedBy!: string | null;

  @Column({ type: 'timestamptz', nullable: true })
  closedAt!: Date | null;

  @Column({ type: 'text', nullable: true })
  remedy!: string | null;
}
