import { signatureOf } from './sign.js';

describe('signatureOf', () => {
  it('signs time and body', () => {
    // Worked out beforehand with another program:
    // printf '%s' '1795615200.{"id":"1"}' | openssl dgst -sha256 -hmac sign_secret
    expect(signatureOf('sign_secret', '{"id":"1"}', 1_795_615_200_999)).toBe(
      't=1795615200,v1=00eac3d9a5d55e8563c886a2fd8d3f48bd513915b57aaa0fd5738358dd00badf',
    );
  });

  it('differs by time, body and secret', () => {
    const all = [
      signatureOf('a', 'x', 1_000),
      signatureOf('a', 'x', 2_000),
      signatureOf('a', 'y', 1_000),
      signatureOf('b', 'x', 1_000),
    ];
    expect(new Set(all).size).toBe(4);
  });
});
