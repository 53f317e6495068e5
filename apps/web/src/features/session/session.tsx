import { createContext, useContext } from 'react';
import type { Role, SessionView } from '#libs/contract/src/index.js';

const Signed = createContext<SessionView | null>(null);

export const SessionProvider = Signed.Provider;

/** Who is signed in. Only below the sign-in gate. */
export function useSession(): SessionView {
  const session = useContext(Signed);
  if (!session) throw new Error('useSession is only for screens behind the sign-in');
  return session;
}

/** Whether the person has one of these roles. Hiding is courtesy; the server decides. */
export function useHasRole(...roles: Role[]): boolean {
  return useSession().person.roles.some((role) => roles.includes(role));
}
