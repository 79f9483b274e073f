import type { AlertWay } from '@/shared/alerts/alert-settings';

/** What the ways of an alert are called on a page. */
const WAY_NAMES: Record<AlertWay, string> = { mail: 'E-mail', webhook: 'The message to the other program' };

/** What became of a message in one way, in words. */
export const wentInWords = ({ way, ok, message }: { way: AlertWay; ok: boolean; message: string }): string =>
  `${WAY_NAMES[way]} ${ok ? 'went' : 'did not go'}. ${message}`;
