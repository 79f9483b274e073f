import { mixQueryText } from '@/shared/forms/mix-query';
import type { Spraying } from '../engine/ahead/plan';
import { ownDay } from '../engine/ahead/program-turns';
import type { OpenSpraying } from '../engine/ahead/turns-on-record';

type Named = Pick<Spraying, 'program' | 'date' | 'occurrence'>;

/** What stands after the question mark of the sheet of a planned spraying, for the benches that are still open. */
export const plannedQuery = ({
  program,
  date,
  occurrence,
  open = program.benches,
}: Named & Partial<OpenSpraying>): string =>
  mixQueryText({
    recipe: null,
    planned: { program: program.id, on: ownDay(program, date, occurrence) },
    what:
      open.length < program.benches.length
        ? { kind: 'benches', benches: open.map(({ id }) => id) }
        : { kind: 'planned' },
    sprayer: null,
  });
