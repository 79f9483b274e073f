import { type Reading, read, unreadable } from '../outcome';
import { asTyped } from '../time/as-typed';
import { MONTHS } from '../time/civil';

/** Whether the day or the month comes first, where a day is written in numbers and its year last. */
export type DayOrder = 'day-first' | 'month-first';

/** In which order a column writes its days: what its cells prove, whether they contradict each other, and one that leaves it open. */
export type ColumnOrder = { proven: DayOrder | null; isMixed: boolean; open: string | null };

const YEAR_LAST = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4})$/;
const YEAR_FIRST = /^(\d{4})([./-])(\d{1,2})\2(\d{1,2})$/;
const NAMED = /^(?:(\d{1,2})[ .-]+([a-z]{3,9})|([a-z]{3,9})[ .]+(\d{1,2})),?[ .,-]+(\d{4})$/i;
const SHORT_YEAR = /^\d{1,2}([./-])\d{1,2}\1\d{2}$/;

/** What the cells of one column say about the order of day and month: only a number above 12 proves it. */
export function orderIn(cells: Iterable<string>): ColumnOrder {
  const proofs = new Set<DayOrder>();
  let open: string | null = null;
  for (const cell of cells) {
    const [, first, , second] = YEAR_LAST.exec(cell.trim()) ?? [];
    if (first === undefined || second === undefined) continue;
    if (Number(first) > 12) proofs.add('day-first');
    else if (Number(second) > 12) proofs.add('month-first');
    else if (Number(first) !== Number(second)) open ??= cell.trim();
  }
  const [proven = null] = proofs;
  return { proven: proofs.size === 1 ? proven : null, isMixed: proofs.size > 1, open };
}

/**
 * A day as people and spreadsheets write it, as year-month-day. What is no day in any of these ways is left as it stands.
 *
 *   2026-03-31   2026/3/31   31.03.2026   3/31/2026   31 Mar 2026   March 31, 2026
 *
 * Takes    the text, and the order of day and month in its column; null when nobody knows it
 * Refuses  a year of two digits; a day that could be two, when the order is not known
 */
export function plainDay(text: string, order: DayOrder | null): Reading<string> {
  const typed = text.trim();
  const [, year, , month, day] = YEAR_FIRST.exec(typed) ?? [];
  if (year && month && day) return read(joined(year, month, day));
  const named = NAMED.exec(typed);
  if (named) return read(fromName(named) ?? typed);
  if (SHORT_YEAR.test(typed)) return unreadable(`${asTyped(typed)} has a year of two digits. Write all four.`);
  const [, first, , second, last] = YEAR_LAST.exec(typed) ?? [];
  if (!first || !second || !last) return read(typed);
  if (Number(first) === Number(second)) return read(joined(last, first, second));
  const meant = Number(first) > 12 ? 'day-first' : Number(second) > 12 ? 'month-first' : order;
  if (meant) return read(meant === 'day-first' ? joined(last, second, first) : joined(last, first, second));
  return unreadable(
    `${asTyped(typed)} can be ${joined(last, second, first)} or ${joined(last, first, second)}. Say whether the day or the month comes first, or write year-month-day.`,
  );
}

const joined = (year: string, month: string, day: string): string =>
  `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;

function fromName([, dayBefore, monthAfter, monthBefore, dayAfter, year]: RegExpExecArray): string | null {
  const [day, name] = [dayBefore ?? dayAfter ?? '', (monthAfter ?? monthBefore ?? '').toLowerCase()];
  const month = MONTHS.findIndex((each) => each.toLowerCase().startsWith(name)) + 1;
  return month > 0 && year ? joined(year, String(month), day) : null;
}
