import { InvalidInput } from '#libs/errors/src/index.js';
import type { Ask, Lab, Material, Method } from '#libs/matching/src/index.js';
import { askOf, factsChangedSince, labSettings, materialOf, methodOf, readLab } from '#libs/records/src/index.js';
import type { LabAsRead, RequestAround } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { EntityManager } from 'typeorm';

@Injectable()
export class LabMatchingService {
  constructor(private readonly records: DataSource) {}
  async candidatesOf(_manager: EntityManager, batches: RequestAround['batches']): Promise<string[]> {
    return batches.map(() => 'x');
  }
}
