import { Controller, Get, HttpCode, Param, ParseUUIDPipe, Post } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { TaskView } from '#libs/contract/src/index.js';
import { requestCancel, getTaskView } from '#libs/records/src/index.js';
import { May } from './may.js';

/** Long work: how far it is. Whoever was given the id of a task may ask; it tells nothing of what the task is about. */
@Controller('tasks')
export class TasksController {
  constructor(private readonly records: DataSource) {}

  @Get(':id')
  @May('see-own')
  view(@Param('id', ParseUUIDPipe) id: string): Promise<TaskView> {
    return getTaskView(this.records.manager, id);
  }

  /** Asks it to stop. It ends as `cancelled`, or as `done` when it was too late. */
  @Post(':id/cancel')
  @HttpCode(202)
  @May('edit-plan')
  cancel(@Param('id', ParseUUIDPipe) id: string): Promise<TaskView> {
    return requestCancel(this.records.manager, id);
  }
}
