import type { ImportView } from '#libs/contract/src/index.js';
import { ITEM_KINDS } from '#libs/matching/src/index.js';
import type { ItemKind } from '#libs/matching/src/index.js';
import { Controller, Get, Header, HttpCode, Post, Query } from '@nestjs/common';
import { ApiProduces } from '@nestjs/swagger';
import { DryRunDto } from '../exchange/dry-run.dto.js';
import { readText } from '../exchange/read-text.js';
import { By } from '../platform/by.js';
import { OneOf } from '../platform/fields.js';
import { FileBody, TakesFile } from '../platform/file-body.js';
import { May } from '../platform/may.js';
import type { SignedIn } from '../platform/signed-in.js';
import { ItemsExchangeService } from './items-exchange.service.js';

const CSV_LIMIT_BYTES = 5 * 1024 * 1024;

export class ExportDto {
  @OneOf(ITEM_KINDS, { optional: true })
  kind?: ItemKind;
}

/** Registered before the items themselves: `items/export.csv` is no id. */
@Controller('items')
export class ItemsExchangeController {
  constructor(private readonly exchange: ItemsExchangeService) {}

  /** The register as CSV, in the form that the import takes. */
  @Get('export.csv')
  @Header('Content-Type', 'text/csv; charset=utf-8')
  @Header('Content-Disposition', 'attachment; filename="items.csv"')
  @ApiProduces('text/csv')
  @May('see-items')
  export(@Query() { kind }: ExportDto): Promise<string> {
    return this.exchange.export(kind);
  }

  /** Takes a CSV of items: new tags are registered, known ones changed. Nothing is kept while one line is bad. */
  @Post('import')
  @HttpCode(200)
  @TakesFile(CSV_LIMIT_BYTES, 'text/csv')
  @May('edit-items')
  import(@FileBody() body: Buffer, @Query() { dryRun }: DryRunDto, @By() by: SignedIn): Promise<ImportView> {
    return this.exchange.import(readText(body), dryRun ?? false, by);
  }
}
