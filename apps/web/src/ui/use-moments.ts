import { createContext, useContext } from 'react';
import { momentsIn } from './moments.js';
import type { Moments } from './moments.js';

/** Until somebody is signed in, the lab is not known: then instants are shown by the clock of this device. */
const MomentsContext = createContext<Moments>(momentsIn(Intl.DateTimeFormat().resolvedOptions().timeZone));

export const MomentsProvider = MomentsContext.Provider;

/** Shows and reads instants by the clock of the lab. */
export function useMoments(): Moments {
  return useContext(MomentsContext);
}
