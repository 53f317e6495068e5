/** Register */
export function RegisterDesk() {
  return null;
}
