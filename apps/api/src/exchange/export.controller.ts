import { Readable } from 'node:stream';
import type { ExportTable } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { exportColumns, exportRows, exportTables, LabRecords } from '#libs/records/src/index.js';
import { Controller, Get, Param, StreamableFile } from '@nestjs/common';
import { ApiProduces } from '@nestjs/swagger';
import { By } from '../platform/by.js';
import { May } from '../platform/may.js';
import type { SignedIn } from '../platform/signed-in.js';
import { csvLines, jsonLines } from './export-lines.js';

/** Each holds a connection to the database as long as somebody reads. */
const MOST_AT_A_TIME = 3;

/** Everything that the lab keeps, for use elsewhere: tables by their names in the database. What opens doors is left out. */
@Controller('export')
export class ExportController {
  private running = 0;

  constructor(private readonly records: LabRecords) {}

  /** What there is to export. */
  @Get()
  @May('export-all')
  tables(): Promise<ExportTable[]> {
    return exportTables(this.records.source);
  }

  /** All tables as lines of JSON, one `{ table, row }` each, as they were at one moment. Files are in base64. */
  @Get('everything.jsonl')
  @ApiProduces('application/x-ndjson')
  @May('export-all')
  async everything(@By() by: SignedIn): Promise<StreamableFile> {
    const names = (await exportTables(this.records.source)).map(({ name }) => name);
    await this.keepRecord('everything', by);
    const lines = jsonLines(exportRows(this.records.source, names, { withoutFiles: false }));
    return this.stream(lines, 'application/x-ndjson', 'everything.jsonl');
  }

  /** One table as lines of JSON. */
  @Get(':table.jsonl')
  @ApiProduces('application/x-ndjson')
  @May('export-all')
  async json(@Param('table') table: string, @By() by: SignedIn): Promise<StreamableFile> {
    await exportColumns(this.records.source, table, { withoutFiles: false });
    await this.keepRecord(table, by);
    const lines = jsonLines(exportRows(this.records.source, [table], { withoutFiles: false }));
    return this.stream(lines, 'application/x-ndjson', `${table}.jsonl`);
  }

  /** One table as CSV, without the content of files. No cell begins a formula. */
  @Get(':table.csv')
  @ApiProduces('text/csv')
  @May('export-all')
  async csv(@Param('table') table: string, @By() by: SignedIn): Promise<StreamableFile> {
    const columns = await exportColumns(this.records.source, table, { withoutFiles: true });
    await this.keepRecord(table, by);
    const lines = csvLines(columns, exportRows(this.records.source, [table], { withoutFiles: true }));
    return this.stream(lines, 'text/csv; charset=utf-8', `${table}.csv`);
  }

  private async keepRecord(what: string, by: SignedIn): Promise<void> {
    if (this.running >= MOST_AT_A_TIME)
      throw new LabError('export/too-many', `Not more than ${MOST_AT_A_TIME} exports at a time. Try again in a while.`);
    await this.records.act(by.id, ({ record }) => record({ kind: 'export/taken', subjectId: what }));
  }

  private stream(lines: AsyncGenerator<string>, type: string, name: string): StreamableFile {
    this.running++;
    const stream = Readable.from(lines, { objectMode: false, highWaterMark: 65_536 });
    stream.once('close', () => this.running--);
    return new StreamableFile(stream, { type, disposition: `attachment; filename="${name}"` });
  }
}
