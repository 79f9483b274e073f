/** How far a last usable day is away, in words; it is still usable on that day itself. */
export function daysLeftText(days: number): string {
  if (days === 0) return 'that is today';
  if (days < 0) return `${-days} ${days === -1 ? 'day' : 'days'} past`;
  return `in ${days} ${days === 1 ? 'day' : 'days'}`;
}
