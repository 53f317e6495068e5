import { Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import { PersonEntity } from '../people/person.entity.js';

/** A file, stored byte for byte, with its hash: certificates, curve files, issued reports. Never changed, never run. */
@Entity('stored_file')
export class StoredFileEntity {
  @PrimaryColumn('uuid')
  id!: string;

  @Column({ type: 'text' })
  name!: string;

  @Column({ type: 'text' })
  mediaType!: string;

  @Column({ type: 'int' })
  sizeBytes!: number;

  @Column({ type: 'text' })
  @Index()
  sha256!: string;

  @Column({ type: 'bytea', select: false })
  content!: Buffer;

  @Column('uuid')
  @ForeignKey(() => PersonEntity)
  storedBy!: string;

  @Column('timestamptz')
  storedAt!: Date;
}
