import 'server-only';
import { cookies } from 'next/headers';
import { isServedByHttps } from '@/lib/door/allowed-hosts';

/** How long a session lasts that is not used, and how long at most: a week, and a month (NIST SP 800-63B, 4.1.3). */
export const IDLE_MS = 7 * 24 * 60 * 60 * 1_000;
export const LONGEST_MS = 30 * 24 * 60 * 60 * 1_000;

/** How long a browser keeps the secret of its device: as long as it keeps any cookie, 400 days. */
const DEVICE_SECONDS = 400 * 24 * 60 * 60;

/** Over https a browser takes the first name from this very host alone, and keeps it from plain http. */
export const sessionCookie = (): string => (isServedByHttps() ? '__Host-bench-session' : 'bench-session');
export const deviceCookie = (): string => (isServedByHttps() ? '__Host-bench-device' : 'bench-device');

/** How a request shows one cookie; null for none. */
export type ShownCookie = (name: string) => string | null;

/** The cookies of a request, as its header has them. The first of two with one name counts, as everywhere. */
export function cookiesIn(header: string | null): ShownCookie {
  const all = (header ?? '').split(';').map((one) => one.trim());
  return (name) => all.find((one) => one.startsWith(`${name}=`))?.slice(name.length + 1) ?? null;
}

/** The cookies of the request that is being answered. */
export async function cookiesHere(): Promise<ShownCookie> {
  const jar = await cookies();
  return (name) => jar.get(name)?.value ?? null;
}

const options = () => ({ httpOnly: true, sameSite: 'lax', path: '/', secure: isServedByHttps() }) as const;

/** Hand a browser the secret of its session, and of its device where that has got one. */
export async function keepInBrowser({ session, device }: { session: string; device: string | null }): Promise<void> {
  const jar = await cookies();
  jar.set(sessionCookie(), session, { ...options(), maxAge: LONGEST_MS / 1_000 });
  if (device !== null) jar.set(deviceCookie(), device, { ...options(), maxAge: DEVICE_SECONDS });
}

/** Take the secret of the session away. The device stays known. */
export async function forgetInBrowser(): Promise<void> {
  (await cookies()).set(sessionCookie(), '', { ...options(), maxAge: 0 });
}
