import { Column, Entity, ForeignKey, Index, PrimaryColumn, VersionColumn } from 'typeorm';
import { RequestEntity } from './request.entity.js';
import { MaterialEntity } from '../methods/material.entity.js';
import { MethodEntity } from '../methods/method.entity.js';

/** Specimens of one request tested under the same conditions. */
@Entity('batch')
export class BatchEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => RequestEntity, { onDelete: 'CASCADE' })
  @Index()
  requestId!: string;

  /** 1, 2, 3 … within the request. */
  @Column({ type: 'int' })
  position!: number;

  @Column({ type: 'text', default: '' })
  label!: string;

  @Column('uuid')
  @ForeignKey(() => MethodEntity)
  @Index()
  methodId!: string;

  @Column({ type: 'uuid', nullable: true })
  @ForeignKey(() => MaterialEntity)
  materialId!: string | null;

  /** The matching core's `Ask` without method and material, figures in the core's units. */
  @Column({ type: 'jsonb' })
  ask!: Record<string, unknown>;

  /** The figures as the requester typed them, with unit, by field path: shown back unchanged. */
  @Column({ type: 'jsonb', default: {} })
  asTyped!: Record<string, { value: string; unit: string }>;

  @Column({ type: 'int' })
  specimenCount!: number;

  @VersionColumn()
  version!: number;
}
