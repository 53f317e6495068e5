import { Check, Column, Entity, PrimaryColumn, VersionColumn } from 'typeorm';
import type { LabSettings } from '#libs/contract/src/index.js';

/** The settings of the lab: one row, edited as a whole under its version. */
@Entity('lab_setting')
@Check('lab_setting_is_one', '"id" = 1')
export class LabSettingEntity {
  @PrimaryColumn({ type: 'int' })
  id!: number;

  @Column({ type: 'jsonb' })
  settings!: LabSettings;

  @Column('timestamptz')
  changedAt!: Date;

  @VersionColumn()
  version!: number;
}
