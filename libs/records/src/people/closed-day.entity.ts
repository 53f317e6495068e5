import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A day on which the lab is closed, in the lab's time zone. */
@Entity('closed_day')
export class ClosedDayEntity {
  /** E.g. `2026-12-25`. */
  @PrimaryColumn({ type: 'date' })
  day!: string;

  @Column({ type: 'text' })
  name!: string;
}
