/** Whole weeks until an order is due, as people say it; undefined when there is nothing to order. */
export function weeksWords(weeks: number | null): string | undefined {
  if (weeks === null) return undefined;
  if (weeks === 0) return 'this week';
  const words = `${Math.abs(weeks)} ${Math.abs(weeks) === 1 ? 'week' : 'weeks'}`;
  return weeks < 0 ? `${words} late` : words;
}
