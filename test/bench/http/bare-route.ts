import 'reflect-metadata';
import { Controller, Get, Module } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import { text } from 'node:stream/consumers';
import pg from 'pg';
import type { Statement } from './capture-sql.js';

/**
 * The peer: a NestJS route with nothing around it, that sends the same statements over the same driver and answers the same
 * body. It runs in a process of its own and writes its address.
 */
export interface BareOrder {
  databaseUrl: string;
  poolSize: number;
  statements: Statement[];
  body: unknown;
}

const order = JSON.parse(await text(process.stdin)) as BareOrder;
const pool = new pg.Pool({ connectionString: order.databaseUrl, max: order.poolSize });

@Controller()
class BareController {
  @Get('bare')
  async bare(): Promise<unknown> {
    for (const { text: sql, values } of order.statements) await pool.query(sql, values);
    return order.body;
  }
}

@Module({ controllers: [BareController] })
class BareModule {}

const app = await NestFactory.create(BareModule, { logger: false });
await app.listen(0, '127.0.0.1');
process.stdout.write(`${await app.getUrl()}\n`);
