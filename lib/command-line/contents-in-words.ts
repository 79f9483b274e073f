import type { Contents, ShopInFile } from '@/lib/data/backup-contents';

const DAY = 86_400_000;

/** What a database file holds, one line for each shop, for a person who looks at it on a terminal. */
export const contentsInWords = ({ shops }: Contents, now: number): string =>
  shops.length === 0 ? '  It holds no shop.' : shops.map((shop) => `  ${lineOf(shop, now)}`).join('\n');

function lineOf({ name, isDemo, createdOn, changedAt, commands, records, movements }: ShopInFile, now: number): string {
  const counts = [many(commands, 'change'), many(records, 'spray record'), many(movements, 'stock movement')].join(
    ', ',
  );
  const last = changedAt === null ? '' : ` to ${momentInWords(changedAt)} (${daysInWords(now - changedAt)})`;
  return `"${name}"${isDemo ? ' (the demo)' : ''}: ${createdOn}${last}; ${counts}`;
}

const many = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

/** A moment on a terminal, where no shop says in which zone: "2026-03-31 09:00 UTC". */
export const momentInWords = (at: number): string => `${new Date(at).toISOString().slice(0, 16).replace('T', ' ')} UTC`;

/** How long ago, in whole days. */
export function daysInWords(ms: number): string {
  const days = (ms - (ms % DAY)) / DAY;
  if (days < 1) return 'less than a day ago';
  return days === 1 ? '1 day ago' : `${days} days ago`;
}
