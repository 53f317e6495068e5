/** Manager */
export function ManagerDesk() {
  return null;
}
