/** Reports */
export function ReportsDesk() {
  return null;
}
