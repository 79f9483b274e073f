import { mixQueryText } from '@/shared/forms/mix-query';
import type { Spraying } from '../engine/ahead/plan';
import { ownDay } from '../engine/mix/planned-turn';

/** What stands after the question mark of the sheet of a planned spraying. */
export const plannedQuery = ({
  program,
  date,
  occurrence,
}: Pick<Spraying, 'program' | 'date' | 'occurrence'>): string =>
  mixQueryText({
    recipe: null,
    planned: { program: program.id, on: ownDay(program, date, occurrence) },
    what: { kind: 'planned' },
    sprayer: 0,
  });
