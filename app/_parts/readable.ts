import 'server-only';
import { unstable_rethrow } from 'next/navigation';

/**
 * What a page shows; or that it cannot be read now. For pages that say who may stand where: those answer with a page
 * that keeps people out, with or without scripts, and never with an error.
 */
export async function readable<T>(read: () => Promise<T>): Promise<T | 'unreadable'> {
  try {
    return await read();
  } catch (error) {
    unstable_rethrow(error);
    console.error('A page cannot be read, so it keeps people out of every bench:', error);
    return 'unreadable';
  }
}
