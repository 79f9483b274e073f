/** A list with one of its rows moved up (−1) or down (1); as it was where there is no such place. */
export function movedRow<T>(rows: readonly T[], from: number, by: -1 | 1): T[] {
  const [row, other] = [rows[from], rows[from + by]];
  if (row === undefined || other === undefined) return [...rows];
  return rows.map((each, at) => (at === from ? other : at === from + by ? row : each));
}
