import { BlockList, isIP } from 'node:net';

/**
 * Networks that are not the public internet: IANA's special-purpose address registries (RFC 6890 and its updates), and IPv6
 * forms that carry an IPv4 address inside. From memory, checked by the spec at the edges.
 */
const NOT_PUBLIC: readonly [network: string, prefix: number][] = [
  ['0.0.0.0', 8], // this network
  ['10.0.0.0', 8], // private, RFC 1918
  ['100.64.0.0', 10], // shared by providers, RFC 6598
  ['127.0.0.0', 8], // loopback
  ['169.254.0.0', 16], // link-local, also where clouds keep their machines' credentials
  ['172.16.0.0', 12], // private, RFC 1918
  ['192.0.0.0', 24],
  ['192.0.2.0', 24], // documentation
  ['192.88.99.0', 24],
  ['192.168.0.0', 16], // private, RFC 1918
  ['198.18.0.0', 15], // benchmarking
  ['198.51.100.0', 24],
  ['203.0.113.0', 24],
  ['224.0.0.0', 4], // multicast
  ['240.0.0.0', 4], // reserved, broadcast
  ['::', 96], // unspecified, loopback, old IPv4 forms
  ['::ffff:0:0', 96], // IPv4 inside
  ['64:ff9b::', 96], // IPv4 inside, RFC 6052
  ['64:ff9b:1::', 48],
  ['100::', 64],
  ['2001::', 23],
  ['2001:db8::', 32],
  ['2002::', 16], // IPv4 inside, 6to4
  ['fc00::', 7], // unique local
  ['fe80::', 10], // link-local
  ['ff00::', 8], // multicast
];

/** One list for each family: a list that knows `::ffff:0:0/96` would take every IPv4 address for one of it. */
const blocked = { ipv4: new BlockList(), ipv6: new BlockList() };
for (const [network, prefix] of NOT_PUBLIC) {
  const family = network.includes(':') ? 'ipv6' : 'ipv4';
  blocked[family].addSubnet(network, prefix, family);
}

/** Whether an address (no name) is one of the public internet. */
export function isPublicAddress(address: string): boolean {
  const version = isIP(address);
  const family = version === 6 ? 'ipv6' : 'ipv4';
  return version !== 0 && !blocked[family].check(address, family);
}
