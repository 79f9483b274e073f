import { hostname, networkInterfaces } from 'node:os';

/**
 * By what this machine is known on its network: its addresses, those of home networks first, then its name with `.local`.
 *
 * Takes    the interfaces and the name as the operating system tells them
 * @param {Record<string, { address: string, internal: boolean }[] | undefined>} interfaces
 */
export function networkNames(interfaces = networkInterfaces(), name = hostname()) {
  const all = Object.values(interfaces).flatMap((ones) => ones ?? []);
  const usable = all.filter(({ internal, address }) => !internal && !/^(169\.254\.|fe80:)/i.test(address));
  const byUse = usable.map(({ address }) => address).sort((one, other) => rank(one) - rank(other));
  const plain = name.toLowerCase().replace(/\.local$/, '');
  const named = /^[a-z0-9]([a-z0-9-]*[a-z0-9])?$/.test(plain) && plain !== 'localhost' ? [`${plain}.local`, plain] : [];
  return [...new Set([...byUse, ...named])];
}

/** Addresses that home and shop routers give out come first; they are what a phone reaches. */
function rank(address) {
  if (address.startsWith('192.168.')) return 0;
  if (address.startsWith('10.')) return 1;
  if (/^172\.(1[6-9]|2\d|3[01])\./.test(address)) return 2;
  return address.includes(':') ? 4 : 3;
}
