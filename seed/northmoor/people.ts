import type { Role } from '#libs/contract/src/index.js';

/** Zone of the lab's wall clock. */
export const ZONE = 'Europe/London';

/** One password for everybody in the demo lab, shown at the start and on the sign-in page; the lab is not for real work. */
export const DEMO_PASSWORD = 'northmoor-demo';

export const TEAMS = ['Frames & forks', 'Components', 'Tents & bags', 'Wheels & tyres'] as const;
export type TeamName = (typeof TEAMS)[number];

/** Which shift somebody works: always the same, or early and late in turn, week by week. */
export type ShiftPattern = 'early' | 'late' | 'turns';

export interface DemoPerson {
  /** Short name by which the demo's other data speak of the person; also the first half of the address. */
  key: string;
  name: string;
  roles: Role[];
  teams: TeamName[];
  shift?: ShiftPattern;
  /** What the technician may run: kinds of work, see `WORK`. */
  work?: Work[];
}

/** Kinds of work that a technician is trained for together. */
export type Work =
  'plastics' | 'metals' | 'heavy' | 'textiles' | 'rubber-and-foam' | 'composites' | 'bonds' | 'torsion' | 'parts';

export const PEOPLE: DemoPerson[] = [
  { key: 'ruth.calloway', name: 'Ruth Calloway', roles: ['manager'], teams: [] },
  {
    key: 'ian.marsh',
    name: 'Ian Marsh',
    roles: ['manager', 'technician'],
    teams: [],
    work: ['metals', 'heavy', 'composites'],
  },
  {
    key: 'tom.ashdown',
    name: 'Tom Ashdown',
    roles: ['technician'],
    teams: [],
    shift: 'early',
    work: ['plastics', 'metals', 'heavy', 'composites', 'bonds', 'parts', 'torsion'],
  },
  {
    key: 'priya.raman',
    name: 'Priya Raman',
    roles: ['technician'],
    teams: [],
    shift: 'early',
    work: ['plastics', 'textiles', 'rubber-and-foam', 'bonds', 'parts'],
  },
  {
    key: 'olu.adeyemi',
    name: 'Olu Adeyemi',
    roles: ['technician'],
    teams: [],
    shift: 'late',
    work: ['plastics', 'metals', 'heavy', 'bonds', 'parts', 'textiles'],
  },
  {
    key: 'mei.lindqvist',
    name: 'Mei Lindqvist',
    roles: ['technician'],
    teams: [],
    shift: 'late',
    work: ['textiles', 'rubber-and-foam', 'plastics', 'bonds'],
  },
  {
    key: 'gareth.pell',
    name: 'Gareth Pell',
    roles: ['technician'],
    teams: [],
    shift: 'turns',
    work: ['plastics', 'parts', 'torsion', 'textiles'],
  },
  { key: 'daniel.orme', name: 'Daniel Orme', roles: ['requester'], teams: ['Frames & forks'] },
  { key: 'katja.lund', name: 'Katja Lund', roles: ['requester'], teams: ['Frames & forks', 'Components'] },
  { key: 'sam.whitlock', name: 'Sam Whitlock', roles: ['requester'], teams: ['Components'] },
  { key: 'beth.tarrant', name: 'Beth Tarrant', roles: ['requester'], teams: ['Tents & bags'] },
  { key: 'jonas.vik', name: 'Jonas Vik', roles: ['requester'], teams: ['Tents & bags'] },
  { key: 'nuno.farrell', name: 'Nuno Farrell', roles: ['requester'], teams: ['Wheels & tyres'] },
  { key: 'helen.voss', name: 'Helen Voss', roles: ['auditor'], teams: [] },
];

/** A reserved top-level domain (RFC 2606), so that no mail ever leaves. */
export const emailOf = (key: string): string => `${key}@northmoor.example`;
