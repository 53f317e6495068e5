import { YesNo } from '../platform/fields.js';
import { FlagInQuery } from './query.js';

export class DryRunDto {
  @FlagInQuery()
  @YesNo({ optional: true, about: 'Only tell what would happen.' })
  dryRun?: boolean;
}
