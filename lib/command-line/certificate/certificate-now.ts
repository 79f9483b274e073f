import { clock } from '@/lib/clock';
import { keptCertificates } from './kept-certificates';

/** What the server speaks https with now, by the names it is reached by; and whether it was just made. */
export async function certificateNow(folder: string, names: readonly string[]) {
  const { server, madeServer } = await keptCertificates(folder, names, clock.now());
  return { ...server, madeServer };
}
