import { createHash, randomUUID } from 'node:crypto';
import { LabError } from '#libs/errors/src/index.js';
import type { EntityManager } from 'typeorm';
import { insertRows } from '../platform/write-rows.js';
import { StoredFileEntity } from './stored-file.entity.js';

/** Largest file that is kept, bytes. */
export const FILE_LIMIT_BYTES = 20 * 1024 * 1024;

export interface NewFile {
  name: string;
  mediaType: string;
  content: Buffer;
  storedBy: string;
  storedAt: Date;
}

/** Files, stored byte for byte. There is no way to change or remove one. */
export class StoredFileRepository {
  constructor(private readonly manager: EntityManager) {}

  async store({ content, ...rest }: NewFile): Promise<{ id: string; sha256: string }> {
    const id = randomUUID();
    const sha256 = createHash('sha256').update(content).digest('hex');
    await insertRows(this.manager, StoredFileEntity, [{ id, sha256, content, sizeBytes: content.length, ...rest }]);
    return { id, sha256 };
  }

  /** With its content. @throws LabError `file/unknown` */
  async get(id: string): Promise<StoredFileEntity> {
    const row = await this.manager
      .createQueryBuilder(StoredFileEntity, 'file')
      .addSelect('file.content')
      .where('file.id = :id', { id })
      .getOne();
    if (!row) throw new LabError('file/unknown', 'There is no such file.', { fileId: id });
    return row;
  }

  exists(id: string): Promise<boolean> {
    return this.manager.existsBy(StoredFileEntity, { id });
  }
}
