/** When somebody is open on a day: from and until, as a shop file has them. */
type Openings = [from: string, until: string][];

/** Openings as a field shows them: "09:00-12:00, 13:00-18:00". */
export const openingsText = (openings: Openings): string =>
  openings.map(([from, until]) => `${from}-${until}`).join(', ');

/** "9:00-12:00, 13:00–18:00": two times and a dash between them, a comma between two openings. Empty: closed. */
export function openingsIn(text: string, complain: (fault: string) => void): Openings {
  if (text.trim() === '') return [];
  return text.split(/[,;]|\band\b/).flatMap((opening): Openings => {
    const parts = /^\s*(\d{1,2}:\d\d)\s*(?:-|–|to)\s*(\d{1,2}:\d\d)\s*$/.exec(opening);
    if (parts) return [[twoDigits(parts[1] ?? ''), twoDigits(parts[2] ?? '')]];
    complain(
      `${JSON.stringify(opening.trim())} is no opening. Write it like "09:00-18:00"; leave it empty for closed.`,
    );
    return [];
  });
}

const twoDigits = (time: string): string => time.padStart(5, '0');
