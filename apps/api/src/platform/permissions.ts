import type { Role } from '#libs/contract/src/index.js';

/**
 * What one may do, and which roles may. Whoever is in none of them is refused: an endpoint without a permission does not start.
 * Whose requests, jobs and reports one sees within a permission is decided where they are read (requesters: their own teams').
 */
export const PERMISSIONS = {
  'see-own': ['requester', 'technician', 'manager', 'auditor'],
  'hear-changes': ['requester', 'technician', 'manager', 'auditor'],
  'see-settings': ['requester', 'technician', 'manager', 'auditor'],
  'edit-settings': ['manager'],
  'see-people': ['manager', 'auditor'],
  'edit-people': ['manager'],
  'see-roster': ['technician', 'manager', 'auditor'],
  'edit-roster': ['manager'],

  'see-items': ['technician', 'manager', 'auditor'],
  'edit-items': ['manager'],
  'report-fault': ['technician', 'manager'],
  'close-fault': ['manager'],
  'edit-rigs': ['technician', 'manager'],
  'record-calibration': ['manager'],
  'see-nonconformities': ['technician', 'manager', 'auditor'],
  'edit-nonconformities': ['manager'],
  'see-methods': ['requester', 'technician', 'manager', 'auditor'],
  'edit-methods': ['manager'],
  'see-files': ['requester', 'technician', 'manager', 'auditor'],
  'store-files': ['technician', 'manager'],

  'submit-request': ['requester', 'manager'],
  'see-requests': ['requester', 'technician', 'manager', 'auditor'],
  'review-request': ['manager'],
  'receive-specimens': ['technician', 'manager'],
  'write-message': ['requester', 'technician', 'manager'],
  match: ['requester', 'technician', 'manager', 'auditor'],

  'see-plan': ['technician', 'manager', 'auditor'],
  'edit-plan': ['manager'],

  'see-jobs': ['technician', 'manager', 'auditor'],
  'run-jobs': ['technician'],
  'abort-jobs': ['manager'],

  'see-results': ['requester', 'technician', 'manager', 'auditor'],
  'see-history': ['technician', 'manager', 'auditor'],
  'edit-results': ['technician', 'manager'],
  'see-reports': ['requester', 'technician', 'manager', 'auditor'],
  'issue-reports': ['manager'],

  'see-record': ['manager', 'auditor'],
  'export-all': ['manager', 'auditor'],
  'edit-webhooks': ['manager'],
  'see-status': ['manager', 'auditor'],
} as const satisfies Record<string, readonly Role[]>;

export type Permission = keyof typeof PERMISSIONS;

/** Everything that somebody with these roles may do. */
export function permissionsOf(roles: readonly Role[]): Set<Permission> {
  const all = Object.entries(PERMISSIONS) as [Permission, readonly Role[]][];
  return new Set(all.filter(([, allowed]) => allowed.some((role) => roles.includes(role))).map(([name]) => name));
}
