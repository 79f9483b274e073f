import 'server-only';
import { lookup } from 'node:dns/promises';
import { BlockList, isIP } from 'node:net';
import { type Reading, read, unreadable } from '@/shared/outcome';

/*
 * Where this program may connect to, when somebody has typed a name. A name can be made to mean anything, a machine in the
 * shop's own network as well as the service of a hosting company that hands out keys. So the name is looked up here, every
 * address that it has is judged, and the connection is made to one that was judged, never to the name.
 */

/** Looks a name up. In tests, something else. */
export type LookUp = (host: string) => Promise<string[]>;

/** An address that was judged. */
export type Judged = { address: string; family: 4 | 6 };

/**
 * The address to connect to for a name.
 *
 * Takes    the name or number of a machine, and whether it may be one of the shop's own: then it must be
 * Refuses  a name that nothing is known of; one with an address that is not of the kind that was allowed; and always the
 *          addresses that mean "this network", "everybody" or "whoever is on this wire"
 */
export async function judgedAddress(
  host: string,
  ownNetwork: boolean,
  lookUp: LookUp = known,
): Promise<Reading<Judged>> {
  const addresses = isIP(host) ? [host] : await lookUp(host).catch(() => []);
  const [first] = addresses;
  if (first === undefined) return unreadable(`Nothing is known of a machine "${host}". Check its name.`);
  for (const address of addresses) {
    const kind = kindOf(address);
    if (kind === 'never') return unreadable(`"${host}" is at ${address}, where nothing may be sent to.`);
    if (kind === 'own' && !ownNetwork)
      return unreadable(`"${host}" is at ${address}, in this machine's own network. ${TICK}`);
    if (kind === 'public' && ownNetwork)
      return unreadable(`"${host}" is at ${address}, outside of this machine's own network. ${UNTICK}`);
  }
  return read({ address: first, family: isIP(first) === 6 ? 6 : 4 });
}

const TICK = 'Say so with the tick, if that is right.';
const UNTICK = 'Take the tick out, if that is right.';

const known: LookUp = async (host) => (await lookup(host, { all: true })).map(({ address }) => address);

/**
 * Whose an address is: everybody's, this machine's or its network's; or nobody's that may be spoken to. One of the old kind
 * written as one of the new ("::ffff:10.0.0.1") is judged as what it is.
 */
export function kindOf(written: string): 'public' | 'own' | 'never' {
  // Behind a percent sign stands the name of a network card.
  const address = written.split('%')[0] ?? '';
  const family = isIP(address) === 6 ? 'ipv6' : 'ipv4';
  if (isIP(address) === 0) return 'never';
  if (OWN.check(address, family)) return 'own';
  return NEVER.check(address, family) ? 'never' : 'public';
}

const OWN = listOf([
  ['127.0.0.0', 8],
  ['10.0.0.0', 8],
  ['172.16.0.0', 12],
  ['192.168.0.0', 16],
  ['::1', 128],
  ['fc00::', 7],
]);

/** Source: the special-purpose address registries of IANA (RFC 6890). */
const NEVER = listOf([
  ['0.0.0.0', 8],
  ['100.64.0.0', 10],
  ['169.254.0.0', 16],
  ['192.0.0.0', 24],
  ['192.0.2.0', 24],
  ['198.18.0.0', 15],
  ['198.51.100.0', 24],
  ['203.0.113.0', 24],
  ['224.0.0.0', 4],
  ['240.0.0.0', 4],
  ['::', 96],
  ['64:ff9b::', 96],
  ['64:ff9b:1::', 48],
  ['100::', 64],
  ['2001::', 23],
  ['2001:db8::', 32],
  ['2002::', 16],
  ['fe80::', 10],
  ['fec0::', 10],
  ['ff00::', 8],
]);

function listOf(nets: [net: string, bits: number][]): BlockList {
  const list = new BlockList();
  for (const [net, bits] of nets) list.addSubnet(net, bits, isIP(net) === 6 ? 'ipv6' : 'ipv4');
  return list;
}
