import { pathToFileURL } from 'node:url';
import { readAddress } from './address.js';

/** How often this machine looks whether its addresses changed, or its certificate is about to end. */
const LOOK_AGAIN_MS = 10 * 60_000;

/** Where the server listens and how it is reached, for the door, which reads it from the environment of this process. */
export const addressInEnv = ({ host, port, publicUrl, network, names }) => ({
  ...{ HOST: host, PORT: String(port), PUBLIC_URL: publicUrl ?? '' },
  ...{ NETWORK: network, NETWORK_NAMES: names.join(' ') },
});

/** The key and certificate to speak https with; null where this server speaks plain http. */
export async function certificateFor(root, folder, { network, names }) {
  if (network !== 'https') return null;
  const { tsImport } = await import('tsx/esm/api');
  const place = pathToFileURL(`${root}lib/command-line/certificate/certificate-now.ts`).href;
  const { certificateNow } = await tsImport(place, import.meta.url);
  return certificateNow(folder, names);
}

/**
 * Follow this machine while it runs: a new address is answered and stands in the certificate, and the certificate is
 * renewed before it ends. Nobody who is connected notices.
 *
 * Takes    the environment and the options that the start was given
 */
export function keepReachable(server, { root, folder, env, asked }) {
  if (!asked.network) return;
  let before = JSON.stringify(readAddress(env, asked));
  const look = async () => {
    const address = readAddress(env, asked);
    const certificate = await certificateFor(root, folder, address);
    if (certificate?.madeServer) server.setSecureContext(certificate);
    const now = JSON.stringify(address);
    if (now !== before) Object.assign(process.env, addressInEnv(address));
    before = now;
  };
  const tell = (error) => console.error('  The addresses of this machine could not be followed:', error.message);
  setInterval(() => look().catch(tell), LOOK_AGAIN_MS).unref();
}
