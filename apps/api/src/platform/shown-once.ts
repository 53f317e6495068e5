import { SetMetadata } from '@nestjs/common';

export const SHOWN_ONCE = 'shown once';

/** The answer holds a secret that is kept nowhere: it is not repeated either to a retry with the same Idempotency-Key. */
export const ShownOnce = () => SetMetadata(SHOWN_ONCE, true);
