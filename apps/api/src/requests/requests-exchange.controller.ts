import type { ImportView } from '#libs/contract/src/index.js';
import { Controller, Get, Header, HttpCode, Post, Query } from '@nestjs/common';
import { ApiProduces } from '@nestjs/swagger';
import { readText } from '../exchange/read-text.js';
import { By } from '../platform/by.js';
import { FileBody, TakesFile } from '../platform/file-body.js';
import { May } from '../platform/may.js';
import type { SignedIn } from '../platform/signed-in.js';
import { DryRunDto } from '../exchange/dry-run.dto.js';
import { RequestsExchangeService } from './requests-exchange.service.js';

const CSV_LIMIT_BYTES = 5 * 1024 * 1024;

/** Registered before the requests themselves: `requests/export.csv` is no id. */
@Controller('requests')
export class RequestsExchangeController {
  constructor(private readonly exchange: RequestsExchangeService) {}

  /** The requests that the person may see as CSV, one batch a line, in the form that the import takes. */
  @Get('export.csv')
  @Header('Content-Type', 'text/csv; charset=utf-8')
  @Header('Content-Disposition', 'attachment; filename="requests.csv"')
  @ApiProduces('text/csv')
  @May('see-requests')
  export(@By() by: SignedIn): Promise<string> {
    return this.exchange.export(by);
  }

  /** Takes a CSV of requests; each becomes a draft. Nothing is kept while one line is bad. */
  @Post('import')
  @HttpCode(200)
  @TakesFile(CSV_LIMIT_BYTES, 'text/csv')
  @May('submit-request')
  import(@FileBody() body: Buffer, @Query() { dryRun }: DryRunDto, @By() by: SignedIn): Promise<ImportView> {
    return this.exchange.import(readText(body), dryRun ?? false, by);
  }
}
