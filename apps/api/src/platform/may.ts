import { SetMetadata } from '@nestjs/common';
import type { Permission } from './permissions.js';

export const ACCESS = 'access';

/** Which permissions open an endpoint (any one of them), or that it is open to everybody. */
export type Access = readonly Permission[] | 'everybody';

/** Only for those who hold one of these permissions. */
export const May = (first: Permission, ...more: Permission[]) => SetMetadata<string, Access>(ACCESS, [first, ...more]);

/** For everybody, signed in or not. */
export const Open = () => SetMetadata<string, Access>(ACCESS, 'everybody');
