import { isPublicAddress } from './public-address.js';

describe('isPublicAddress', () => {
  it.each([
    ['9.255.255.255', '10.0.0.0'],
    ['11.0.0.0', '10.255.255.255'],
    ['100.63.255.255', '100.64.0.0'],
    ['100.128.0.0', '100.127.255.255'],
    ['126.255.255.255', '127.0.0.1'],
    ['169.253.255.255', '169.254.169.254'],
    ['172.15.255.255', '172.16.0.0'],
    ['172.32.0.0', '172.31.255.255'],
    ['192.167.255.255', '192.168.0.0'],
    ['223.255.255.255', '224.0.0.0'],
    ['2606:4700::1111', '::1'],
    ['2001:200::1', '2001:db8::1'],
    ['fbff::1', 'fc00::1'],
    ['fe7f::1', 'fe80::1'],
  ])('takes %s and refuses %s', (outside, inside) => {
    expect([isPublicAddress(outside), isPublicAddress(inside)]).toEqual([true, false]);
  });

  it('refuses an IPv4 address in an IPv6 coat, and what is no address', () => {
    const coats = ['::ffff:127.0.0.1', '::ffff:7f00:1', '64:ff9b::7f00:1', '2002:7f00:1::', '::', 'localhost', ''];
    expect(coats.filter(isPublicAddress)).toEqual([]);
  });
});
