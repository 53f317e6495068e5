/** v */
export function VerifyScreen() {
  return null;
}
