import type { Material } from '#libs/matching/src/index.js';
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
  group!: Material['group'];

  @Column({ type: 'jsonb' })
  data!: Material;

  @VersionColumn()
  version!: number;
}
