const MINUTE = 60_000;

/** How old something is, in words: "12 min", "3 h", "2 days". Takes milliseconds. Rounds up: nothing reads newer than it is. */
export function ageText(age: number): string {
  const minutes = Math.max(1, Math.ceil(age / MINUTE));
  if (minutes < 120) return `${minutes} min`;
  const hours = Math.ceil(minutes / 60);
  return hours < 48 ? `${hours} h` : `${Math.ceil(hours / 24)} days`;
}
