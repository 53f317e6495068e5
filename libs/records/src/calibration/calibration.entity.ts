import type { EvaluationView, ExtensionReadingsBody, ForceReadingsBody } from '#libs/contract/src/index.js';
import type { CalibratedQuantity } from '#libs/matching/src/index.js';
import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { StoredFileEntity } from '../exchange/stored-file.entity.js';
import { ItemEntity } from '../register/item.entity.js';
import { PersonEntity } from '../people/person.entity.js';

/** One direction and range that a calibration vouches for, in the item's own unit (N, mm or N·m). */
export interface CalibratedRange {
  direction: CalibratedQuantity;
  /** Class by the named standard, e.g. `0.5`, `1`, `B-1`; null when no class was reached. */
  className: string | null;
  from: number;
  to: number;
  unit: 'N' | 'mm' | 'N·m' | '°C' | 'mm/min';
}

/** Readings as they were entered, with the figures of each step. */
export interface CalibrationReadings {
  forceReadings: ForceReadingsBody[];
  extensionReadings: ExtensionReadingsBody | null;
  steps: EvaluationView['steps'];
  notes: string[];
}

/**
 * A traceable comparison of one item. Rows are never edited: a correction is a new row that names the one it replaces.
 * Whether it is in force is computed from `validFrom`, `dueOn` and the item's later faults, never stored.
 */
@Entity('calibration')
@Check('calibration_due_after_valid', '"due_at" > "valid_from"')
export class CalibrationEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  @ForeignKey(() => ItemEntity)
  @Index()
  itemId!: string;

  @Column({ type: 'text' })
  standard!: string;

  @Column({ type: 'text', default: '' })
  certificateNumber!: string;

  @Column({ type: 'text', default: '' })
  laboratory!: string;

  @Column({ type: 'timestamptz' })
  performedAt!: Date;

  @Column({ type: 'timestamptz' })
  validFrom!: Date;

  @Column({ type: 'timestamptz' })
  dueAt!: Date;

  @Column({ type: 'jsonb' })
  ranges!: CalibratedRange[];

  /** As found before adjustment: within the limits, out of tolerance, or not recorded. */
  @Column({ type: 'text', default: 'within' })
  asFound!: 'within' | 'out-of-tolerance' | 'not-recorded';

  /** Readings as entered and the figures computed from them; null when only the certificate was entered. */
  @Column({ type: 'jsonb', nullable: true })
  readings!: CalibrationReadings | null;

  @Column({ type: 'uuid', nullable: true })
  @ForeignKey(() => StoredFileEntity)
  certificateFileId!: string | null;

  @Column({ type: 'uuid', nullable: true })
  @ForeignKey(() => CalibrationEntity, { deferrable: 'INITIALLY DEFERRED' })
  replaces!: string | null;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  enteredBy!: string;

  @Column('timestamptz')
  enteredAt!: Date;
}
