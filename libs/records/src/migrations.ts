import { BringExtensions1764000000000 } from './migrations/1764000000000-bring-extensions.js';
import { LayOutTheTables1764000001000 } from './migrations/1764000001000-lay-out-the-tables.js';
import { ChainTheRecord1764000002000 } from './migrations/1764000002000-chain-the-record.js';
import { FindRequestsByWords1764000003000 } from './migrations/1764000003000-find-requests-by-words.js';
import { RefuseReferencesToNothing1795927295526 } from './migrations/1795927295526-refuse-references-to-nothing.js';
import { KeepTasksOfUnknownKinds1796027801000 } from './migrations/1796027801000-keep-tasks-of-unknown-kinds.js';
import { SayWhyAResultIsMissing1796028000000 } from './migrations/1796028000000-say-why-a-result-is-missing.js';
import { KeepWhatAnImportCalledARequest1796030552237 } from './migrations/1796030552237-keep-what-an-import-called-a-request.js';
import { TakeTheTimeFromTheClockOfTheLab1796073546559 } from './migrations/1796073546559-take-the-time-from-the-clock-of-the-lab.js';

/** Every step of the schema, oldest first. A step that was released is never edited. */
export const MIGRATIONS = [
  BringExtensions1764000000000,
  LayOutTheTables1764000001000,
  ChainTheRecord1764000002000,
  FindRequestsByWords1764000003000,
  RefuseReferencesToNothing1795927295526,
  KeepTasksOfUnknownKinds1796027801000,
  SayWhyAResultIsMissing1796028000000,
  KeepWhatAnImportCalledARequest1796030552237,
  TakeTheTimeFromTheClockOfTheLab1796073546559,
] as const;
