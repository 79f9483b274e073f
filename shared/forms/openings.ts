import { plainOpening } from '../time/time-written';

/** When somebody is open on a day: from and until, as a shop file has them. */
type Openings = [from: string, until: string][];

/** Openings as a field shows them: "09:00-12:00, 13:00-18:00". */
export const openingsText = (openings: Openings): string =>
  openings.map(([from, until]) => `${from}-${until}`).join(', ');

/** "9am-12pm, 13:00–18:00": two times and a dash between them, a comma between two openings. Empty, or "closed": closed. */
export function openingsIn(text: string, complain: (fault: string) => void): Openings {
  if (/^\s*(closed)?\s*$/i.test(text)) return [];
  return text.split(/[,;]|\band\b/).flatMap((opening): Openings => {
    const plain = plainOpening(opening);
    if (plain) return [plain];
    complain(
      `${JSON.stringify(opening.trim())} is no opening. Write it like "09:00-18:00" or "9am-6pm"; leave it empty for closed.`,
    );
    return [];
  });
}
