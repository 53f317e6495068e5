import { Controller, Get } from '@nestjs/common';
import type { StatusPart, StatusView } from '#libs/contract/src/index.js';
import { figuresOfOperation, LabRecords } from '#libs/records/src/index.js';
import type { OperationFigures } from '#libs/records/src/index.js';
import { May } from '../platform/may.js';

/** From so long on it is no longer ordinary, s. */
const SLOW_S = { handOver: 30, task: 300 };

@Controller('status')
export class StatusController {
  constructor(private readonly records: LabRecords) {}

  /** What is wrong, in words, and what works all the same. */
  @Get()
  @May('see-status')
  async view(): Promise<StatusView> {
    const figures = await figuresOfOperation(this.records.source, this.records.clock.now());
    const parts = [queueOf, workOf, setAsideOf, failuresOf, mailsOf, programsOf].map((part) => part(figures));
    return { parts, at: this.records.clock.now().toISOString() };
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

function setAsideOf({ tasks_set_aside: count }: OperationFigures): StatusPart {
  if (count === 0)
    return { part: 'versions', state: 'well', sentence: 'The workers know every kind of work that was announced.' };
  const sentence = `${count} pieces of work are of a kind that no running worker knows. They are kept, and done as soon as a worker of the version that announced them runs; everything else goes on.`;
  return { part: 'versions', state: 'trouble', sentence };
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

function mailsOf({ mails_not_sent: count }: OperationFigures): StatusPart {
  if (count === 0) return { part: 'mails', state: 'well', sentence: 'No mail of the last day was refused.' };
  const sentence = `${count} of the last day’s mails have not been taken by the mail server. They are tried again for more than a day; what they say stands in the notices of the page.`;
  return { part: 'mails', state: 'trouble', sentence };
}

function programsOf({ deliveries_not_made: count }: OperationFigures): StatusPart {
  if (count === 0)
    return {
      part: 'other programs',
      state: 'well',
      sentence: 'Everything of the last day was delivered to other programs.',
    };
  const sentence = `${count} of the last day’s messages have not been delivered to other programs. They are tried again for a day; “Import and export” shows which and why.`;
  return { part: 'other programs', state: 'trouble', sentence };
}

function spoken(seconds: number): string {
  return seconds < 120 ? `${Math.round(seconds)} s` : `${Math.round(seconds / 60)} min`;
}
