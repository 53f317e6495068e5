import { FILE_LIMIT_BYTES, LabRecords, StoredFileRepository } from '#libs/records/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { Controller, Get, Header, Param, Post, Query, Req, StreamableFile } from '@nestjs/common';
import { ApiProduces } from '@nestjs/swagger';
import { By } from '../platform/by.js';
import { Text } from '../platform/fields.js';
import { FileBody, TakesFile } from '../platform/file-body.js';
import { May } from '../platform/may.js';
import type { LabRequest, SignedIn } from '../platform/signed-in.js';
import { AnId } from './an-id.js';

/** What a browser may be told that a file is; everything else is bytes to it. */
const KNOWN_TYPES = ['application/pdf', 'image/png', 'image/jpeg', 'text/csv', 'text/plain'];

export class FileNameDto {
  @Text({ max: 200, pattern: /^[^/\\]+$/, allowed: 'a file name without folders' })
  name: string;
}

/** Files kept byte for byte: certificates and the like. They are only ever handed out to be saved, never shown or run. */
@Controller('files')
export class FilesController {
  constructor(private readonly records: LabRecords) {}

  /** Keeps the raw body as a file of at most 20 MB. */
  @Post()
  @TakesFile(FILE_LIMIT_BYTES, 'application/octet-stream')
  @May('store-files')
  async keep(
    @Req() request: LabRequest,
    @FileBody() content: Buffer,
    @Query() { name }: FileNameDto,
    @By() by: SignedIn,
  ): Promise<{ id: string; sha256: string }> {
    const sent = request.headers['content-type']?.split(';')[0]?.trim().toLowerCase() ?? '';
    const mediaType = KNOWN_TYPES.includes(sent) ? sent : 'application/octet-stream';
    return this.records.act(by.id, async ({ manager, record, now }) => {
      const file = { name, mediaType, content, storedBy: by.id, storedAt: now() };
      const kept = await new StoredFileRepository(manager).store(file);
      await record({
        kind: 'file/stored',
        subjectId: kept.id,
        after: { name, mediaType, sizeBytes: content.length, sha256: kept.sha256 },
      });
      return kept;
    });
  }

  /** People outside of the lab get what they stored themselves. */
  @Get(':id')
  @Header('Cache-Control', 'private, max-age=86400, immutable')
  @ApiProduces('application/octet-stream')
  @May('see-files')
  async get(@Param('id', AnId) id: string, @By() by: SignedIn): Promise<StreamableFile> {
    const file = await new StoredFileRepository(this.records.manager).get(id);
    const ofTheLab = by.roles.some((role) => role !== 'requester');
    if (!ofTheLab && file.storedBy !== by.id)
      throw new LabError('file/unknown', 'There is no such file.', { fileId: id });
    const disposition = `attachment; filename*=UTF-8''${encodeURIComponent(file.name)}`;
    return new StreamableFile(file.content, { type: file.mediaType, disposition, length: file.sizeBytes });
  }
}
