/** What the spec of single sign-on uses of the provider, which brings no types of its own. */
declare module 'oidc-provider' {
  import type { RequestListener } from 'node:http';

  export class Provider {
    constructor(issuer: string, configuration: Record<string, unknown>);
    callback(): RequestListener;
  }
}
