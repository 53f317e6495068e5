import type { Item, ItemKind, ItemState, Ratings, Utility } from '#libs/matching/src/index.js';
import { Check, Column, Entity, Index, PrimaryColumn, VersionColumn } from 'typeorm';

/**
 * One physical unit with one tag: a frame, a load cell, a grip, a jaw face, a fixture, and so on.
 * What only one kind has lies in `details`; its fields, units and bounds stand in the matching core's table of item fields.
 */
@Entity('item')
@Check('item_mass_not_negative', '"mass_kg" >= 0')
@Check('item_length_not_negative', '"length_mm" >= 0')
@Check('item_state_known', `"state" in ('in-service', 'faulty', 'out-of-use')`)
export class ItemEntity {
  @PrimaryColumn('uuid')
  id!: string;

  /** What the label says and the barcode reader types, e.g. `LC-05-2`. Never reused. */
  @Column({ type: 'text', unique: true })
  tag!: string;

  @Column({ type: 'text' })
  @Index()
  kind!: ItemKind;

  @Column({ type: 'text' })
  name!: string;

  @Column({ type: 'text', default: '' })
  model!: string;

  @Column({ type: 'text', default: '' })
  serialNumber!: string;

  @Column({ type: 'text', default: 'in-service' })
  state!: ItemState;

  /** Where it lies when it is not fitted, e.g. `Drawer 3`. */
  @Column({ type: 'text', default: '' })
  place!: string;

  @Column({ type: 'double precision', default: 0 })
  massKg!: number;

  /** What it adds to the stack between crosshead and base, mm. */
  @Column({ type: 'double precision', default: 0 })
  lengthMm!: number;

  /** What it carries per direction and temperature: N, or N·m for torque. */
  @Column({ type: 'jsonb', default: {} })
  ratings!: Ratings;

  @Column({ type: 'double precision', default: 10 })
  temperatureMinC!: number;

  @Column({ type: 'double precision', default: 35 })
  temperatureMaxC!: number;

  /** What must be at the frame for it to work. */
  @Column({ type: 'jsonb', default: [] })
  utilities!: Utility[];

  @Column({ type: 'boolean', default: false })
  needsCalibration!: boolean;

  /** Months between calibrations; null where none is needed. */
  @Column({ type: 'int', nullable: true })
  calibrationIntervalMonths!: number | null;

  @Column({ type: 'jsonb' })
  details!: Item['details'];

  @Column('timestamptz')
  registeredAt!: Date;

  @VersionColumn()
  version!: number;
}
