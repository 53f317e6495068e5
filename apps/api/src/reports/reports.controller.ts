import type { ReportDocument, ReportLine, ReportView, VerifyView } from '#libs/contract/src/index.js';
import {
  Body,
  Controller,
  Get,
  Header,
  HttpCode,
  Param,
  ParseUUIDPipe,
  Patch,
  Post,
  Query,
  StreamableFile,
} from '@nestjs/common';
import { ApiProduces } from '@nestjs/swagger';
import { By } from '../platform/by.js';
import { IfMatch } from '../platform/if-match.js';
import { May, Open } from '../platform/may.js';
import type { SignedIn } from '../platform/signed-in.js';
import { reportCsv } from './report-csv.js';
import { AmendDto, ListReportsDto, RemarksDto, VerifyDto } from './report.dto.js';
import { ReportsService } from './reports.service.js';

const REPORTS_A_PAGE = 50;

@Controller()
export class ReportsController {
  constructor(private readonly reports: ReportsService) {}

  @Get('reports')
  @May('see-reports')
  list(@Query() { q, limit }: ListReportsDto, @By() by: SignedIn): Promise<ReportLine[]> {
    return this.reports.list(q, limit ?? REPORTS_A_PAGE, by);
  }

  /** Prepares the report of a request; the draft follows the record until it is issued. */
  @Post('requests/:id/report')
  @May('issue-reports')
  async prepare(@Param('id', ParseUUIDPipe) id: string, @By() by: SignedIn): Promise<ReportView> {
    return this.reports.view(await this.reports.prepare(id, by), by);
  }

  @Get('reports/:id')
  @May('see-reports')
  view(@Param('id', ParseUUIDPipe) id: string, @By() by: SignedIn): Promise<ReportView> {
    return this.reports.view(id, by);
  }

  @Patch('reports/:id')
  @May('issue-reports')
  async remark(
    @Param('id', ParseUUIDPipe) id: string,
    @IfMatch() version: number,
    @Body() body: RemarksDto,
    @By() by: SignedIn,
  ): Promise<ReportView> {
    await this.reports.remark(id, version, body, by);
    return this.reports.view(id, by);
  }

  /** Authorises and issues; If-Match says which version was looked at. */
  @Post('reports/:id/issue')
  @HttpCode(202)
  @May('issue-reports')
  async issue(
    @Param('id', ParseUUIDPipe) id: string,
    @IfMatch() version: number,
    @By() by: SignedIn,
  ): Promise<ReportView> {
    await this.reports.issue(id, version, by);
    return this.reports.view(id, by);
  }

  @Post('reports/:id/amend')
  @May('issue-reports')
  async amend(
    @Param('id', ParseUUIDPipe) id: string,
    @Body() { why }: AmendDto,
    @By() by: SignedIn,
  ): Promise<ReportView> {
    return this.reports.view(await this.reports.amend(id, why, by), by);
  }

  /** The issued file, byte for byte. */
  @Get('reports/:id/file.pdf')
  @ApiProduces('application/pdf')
  @May('see-reports')
  async file(@Param('id', ParseUUIDPipe) id: string, @By() by: SignedIn): Promise<StreamableFile> {
    const file = await this.reports.file(id, by);
    return new StreamableFile(file.content, {
      type: 'application/pdf',
      disposition: `attachment; filename="${file.name}"`,
      length: file.sizeBytes,
    });
  }

  @Get('reports/:id/data.csv')
  @Header('Content-Type', 'text/csv; charset=utf-8')
  @Header('Content-Disposition', 'attachment; filename="results.csv"')
  @ApiProduces('text/csv')
  @May('see-reports')
  async csv(@Param('id', ParseUUIDPipe) id: string, @By() by: SignedIn): Promise<string> {
    return reportCsv((await this.reports.view(id, by)).document);
  }

  @Get('reports/:id/data.json')
  @May('see-reports')
  async json(@Param('id', ParseUUIDPipe) id: string, @By() by: SignedIn): Promise<ReportDocument> {
    return (await this.reports.view(id, by)).document;
  }

  /** Whether this lab issued a report of that number, and whether a file is it. Open: whoever holds a report may ask. */
  @Get('verify/:number')
  @Open()
  verify(@Param('number') number: string, @Query() { revision, hash }: VerifyDto): Promise<VerifyView> {
    return this.reports.verify(number, revision, hash);
  }
}
