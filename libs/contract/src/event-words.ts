/** What an event of the record is called in a sentence, after `because`; by its kind. */
const WORDS: Readonly<Record<string, string>> = {
  'request/accepted': 'a request was accepted',
  'request/withdrawn': 'a request was withdrawn',
  'request/edited': 'a request was changed',
  'request/specimens-arrived': 'specimens arrived',
  'job/taken': 'a job was taken',
  'job/rigged': 'a frame was rigged',
  'job/running': 'a test began',
  'job/paused': 'a test was paused',
  'job/blocked': 'a job was blocked',
  'job/aborted': 'a job was given up',
  'job/ready': 'a job was put back',
  'job/done': 'a job was finished',
  'item/registered': 'an item was registered',
  'item/changed': 'an item was changed',
  'item/calibrated': 'an item was calibrated',
  'item/calibration-overdue': 'a calibration fell due',
  'item/fault-opened': 'an item was reported faulty',
  'item/fault-closed': 'an item was repaired',
  'item/window-added': 'an item was set aside for a time',
  'item/window-removed': 'an item is free again',
  'items/imported': 'items were imported',
  'rig/changed': 'a rig was changed',
  'roster/added': 'a shift was added',
  'roster/removed': 'a shift was taken off',
  'person/authorised': 'somebody was authorised',
  'person/authorisation-ended': 'an authorisation ended',
  'settings/changed': 'the settings were changed',
};

/** An event as people say it; what is no kind of event is taken for a sentence and stays. */
export function eventWords(kind: string): string {
  if (WORDS[kind]) return WORDS[kind];
  return /^[a-z-]+\/[a-z-]+$/.test(kind) ? kind.replace('/', ': ').replaceAll('-', ' ') : kind;
}
