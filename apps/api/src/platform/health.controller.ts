import { Controller, Get, Res } from '@nestjs/common';
import type { Response } from 'express';
import { DataSource } from 'typeorm';
import { ping } from '#libs/records/src/index.js';
import { Open } from './may.js';

/** For whatever watches over the process. */
@Controller('health')
export class HealthController {
  constructor(private readonly records: DataSource) {}

  /** The process runs: if this is not answered, start it anew. */
  @Get('live')
  @Open()
  live(): { alive: true } {
    return { alive: true };
  }

  /** It can serve people: if this says 503, send them elsewhere for now. */
  @Get('ready')
  @Open()
  async ready(
    @Res({ passthrough: true }) response: Response,
  ): Promise<{ ready: boolean; database: 'ok' | 'not reached' }> {
    const ready = await ping(this.records).catch(() => false);
    if (!ready) response.status(503);
    return { ready, database: ready ? 'ok' : 'not reached' };
  }
}
