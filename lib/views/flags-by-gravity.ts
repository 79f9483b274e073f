import { byGravity, type Flag, type Severity } from '../engine/rules/flag';

/** What must stop first, then what needs a look, then notes; the order of days is kept. */
export const gravestFirst = (flags: Flag[]): Flag[] => [...flags].sort(byGravity);

/** How many of each severity, for a short line: "2 stops, 1 to look at". Empty when there is none. */
export function flagsInWords(flags: Flag[]): string {
  const count = (severity: Severity) => flags.filter((flag) => flag.severity === severity).length;
  const [stops, looks, notes] = [count('stop'), count('warn'), count('note')];
  return [
    stops > 0 && `${stops} ${stops === 1 ? 'stop' : 'stops'}`,
    looks > 0 && `${looks} to look at`,
    notes > 0 && `${notes} ${notes === 1 ? 'note' : 'notes'}`,
  ]
    .filter(Boolean)
    .join(', ');
}
