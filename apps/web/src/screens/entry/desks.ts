import type { Role } from '#libs/contract/src/index.js';
import type { ChainPart } from './chain-part.js';

export interface Sheet {
  to: string;
  label: string;
  roles?: readonly Role[];
}

export interface Desk {
  key: string;
  label: string;
  to: string;
  part: ChainPart;
  roles: readonly Role[];
  sheets: readonly Sheet[];
}

/** The desks in the order of the chain, from crosshead to base. */
export const DESKS: readonly Desk[] = [
  {
    key: 'requests',
    label: 'Requests',
    to: '/requests',
    part: 'adapter',
    roles: ['requester', 'manager', 'technician', 'auditor'],
    sheets: [
      { to: '/requests', label: 'All requests' },
      { to: '/requests/new', label: 'New request', roles: ['requester', 'manager'] },
    ],
  },
  {
    key: 'planning',
    label: 'Planning',
    to: '/planning/intake',
    part: 'cell',
    roles: ['manager', 'auditor'],
    sheets: [
      { to: '/planning/intake', label: 'Intake' },
      { to: '/planning/arrivals', label: 'Arrivals' },
      { to: '/planning/lanes', label: 'Frame lanes' },
      { to: '/planning/late', label: 'Late and at risk' },
      { to: '/planning/trials', label: 'Trial plans' },
      { to: '/planning/help', label: 'What would help' },
      { to: '/planning/pools', label: 'Load and pools' },
      { to: '/planning/roster', label: 'Roster' },
    ],
  },
  {
    key: 'bench',
    label: 'Bench',
    to: '/bench',
    part: 'specimen',
    roles: ['technician', 'manager'],
    sheets: [{ to: '/bench', label: 'Next job' }],
  },
  {
    key: 'register',
    label: 'Register',
    to: '/register/items',
    part: 'grip',
    roles: ['technician', 'manager', 'auditor'],
    sheets: [
      { to: '/register/items', label: 'Items' },
      { to: '/register/due', label: 'Calibration due' },
      { to: '/register/nonconformities', label: 'Non\u00ADconformities' },
      { to: '/register/rigs', label: 'Rigs' },
      { to: '/register/methods', label: 'Methods' },
      { to: '/register/materials', label: 'Materials' },
      { to: '/register/exchange', label: 'Import and export' },
      { to: '/register/people', label: 'People', roles: ['manager', 'auditor'] },
      { to: '/register/settings', label: 'Settings', roles: ['manager', 'auditor'] },
      { to: '/register/record', label: 'Record', roles: ['manager', 'auditor'] },
      { to: '/register/status', label: 'System', roles: ['manager', 'auditor'] },
    ],
  },
  {
    key: 'reports',
    label: 'Reports',
    to: '/reports',
    part: 'platen',
    roles: ['requester', 'technician', 'manager', 'auditor'],
    sheets: [
      { to: '/reports', label: 'Find a report' },
      { to: '/reports/history', label: 'History of results', roles: ['technician', 'manager', 'auditor'] },
    ],
  },
];

/** Where a person lands after signing in. */
export function homeOf(roles: readonly Role[]): string {
  if (roles.includes('manager')) return '/planning/intake';
  if (roles.includes('technician')) return '/bench';
  if (roles.includes('requester')) return '/requests';
  return '/register/record';
}
