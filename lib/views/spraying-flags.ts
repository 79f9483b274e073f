import 'server-only';
import { keptWith } from '../data/kept';
import type { Plan, Spraying } from '../engine/ahead/plan';
import { grouped } from '../engine/grouped';
import type { Flag } from '../engine/rules/flag';

const sorted = keptWith<readonly Flag[], ReadonlyMap<string, Flag[]>>('flags of sprayings');

/** What is flagged about one spraying of a plan. All flags are gone through once for each plan, however many sprayings it has. */
export function sprayingFlags({ flags }: Pick<Plan, 'flags'>, { program, date }: Spraying): Flag[] {
  const bySpraying = sorted.get(flags) ?? grouped(flags, (flag) => nameOf(flag.program, flag.on));
  sorted.set(flags, bySpraying);
  return bySpraying.get(nameOf(program.id, date)) ?? [];
}

const nameOf = (program: string | null, day: string): string => `${day} ${program}`;
