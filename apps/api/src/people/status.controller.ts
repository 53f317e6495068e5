import { Controller, Get } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { StatusPart, StatusView } from '#libs/contract/src/index.js';
import { figuresOfOperation } from '#libs/records/src/index.js';
import type { OperationFigures } from '#libs/records/src/index.js';
import { May } from '../platform/may.js';

/** From so long on it is no longer ordinary, s. */
const SLOW_S = { handOver: 30, task: 300 };

@Controller('status')
export class StatusController {
  constructor(private readonly records: DataSource) {}

  /** What is wrong, in words, and what works all the same. */
  @Get()
  @May('see-status')
  async view(): Promise<StatusView> {
    const figures = await figuresOfOperation(this.records);
    return { parts: [queueOf(figures), workOf(figures), failuresOf(figures)], at: new Date().toISOString() };
  }
}

function queueOf({ oldest_not_handed_over_s: waitsS }: OperationFigures): StatusPart {
  if (waitsS < SLOW_S.handOver) return { part: 'queue', state: 'well', sentence: 'Work reaches the queue at once.' };
  const sentence = `Work has been waiting for the queue for ${spoken(waitsS)}: no worker runs, or the queue cannot be reached. Requests, the bench and the register work as usual; plans, curves and reports follow when it is back.`;
  return { part: 'queue', state: 'trouble', sentence };
}

function workOf({ oldest_task_waits_s: waitsS, tasks_waiting: waiting }: OperationFigures): StatusPart {
  if (waitsS < SLOW_S.task)
    return { part: 'work', state: 'well', sentence: 'Plans, curves and reports are worked on as they come.' };
  const sentence = `${waiting} pieces of work wait, the oldest for ${spoken(waitsS)}. Nothing is lost; start another worker if this stays so.`;
  return { part: 'work', state: 'trouble', sentence };
}

function failuresOf({ tasks_failed_last_day: failed }: OperationFigures): StatusPart {
  if (failed === 0)
    return { part: 'failures', state: 'well', sentence: 'No piece of work has failed since yesterday.' };
  return {
    part: 'failures',
    state: 'trouble',
    sentence: `${failed} pieces of work have failed since yesterday. The log says why.`,
  };
}

function spoken(seconds: number): string {
  return seconds < 120 ? `${Math.round(seconds)} s` : `${Math.round(seconds / 60)} min`;
}
