import { Column, Entity, ForeignKey, Index, PrimaryColumn, VersionColumn } from 'typeorm';
import type { SpecimenFate } from '#libs/contract/src/index.js';
import { BatchEntity } from './batch.entity.js';

/** One piece under test, with a label, measured dimensions and a fate. */
@Entity('specimen')
export class SpecimenEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => BatchEntity, { onDelete: 'CASCADE' })
  @Index()
  batchId!: string;

  /** E.g. `R-2031-1-03`: request, batch, piece. Also on the specimen's own label. */
  @Column({ type: 'text', unique: true })
  label!: string;

  @Column({ type: 'int' })
  position!: number;

  @Column({ type: 'text', default: 'expected' })
  fate!: SpecimenFate;

  /** Why it is invalid; required for an invalid one. */
  @Column({ type: 'text', nullable: true })
  invalidWhy!: string | null;

  @Column({ type: 'timestamptz', nullable: true })
  arrivedAt!: Date | null;

  /** Condition on receipt, in words; empty means as expected. */
  @Column({ type: 'text', default: '' })
  condition!: string;

  @Column({ type: 'timestamptz', nullable: true })
  conditioningFrom!: Date | null;

  /** Several readings per dimension, mm: `{ widthMm: [10.01, 10.02, 9.99] }`. */
  @Column({ type: 'jsonb', default: {} })
  dimensions!: Record<string, number[]>;

  /** By result key, why a tested specimen has no figure of a result that was asked for. */
  @Column({ type: 'jsonb', default: {} })
  missingWhy!: Record<string, string>;

  @VersionColumn()
  version!: number;
}
