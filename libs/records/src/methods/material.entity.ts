import { Column, Entity, PrimaryColumn, VersionColumn } from 'typeorm';

/** A material with its strength bands, source and confidence: the matching core's `Material` in `data`. */
@Entity('material')
export class MaterialEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column({ type: 'text', unique: true })
  code!: string;

  @Column({ type: 'text' })
  name!: string;

  @Column({ type: 'text' })
  group!: string;

  @Column({ type: 'jsonb' })
  data!: Record<string, unknown>;

  @VersionColumn()
  version!: number;
}
