import { nextDays, type WhenTyped } from '@/shared/forms/repeat';
import type { Day } from '@/shared/time/day';
import { showDayShort } from '@/shared/time/show-day';
import type { Zone } from '@/shared/time/zone';

type NextDaysProps = { typed: WhenTyped; recipes: string[]; today: Day; zone: Zone; most: number };

/** The next days of a program as it is typed, with the recipe whose turn it is where several rotate. */
export function NextDays({ typed, recipes, today, zone, most }: NextDaysProps) {
  const next = nextDays(typed, zone, today, most);
  if (!next.ok) return <span className="soft">{next.message}</span>;
  if (next.value.length === 0) return <span className="soft">No day from today on.</span>;
  const turn = (index: number) => (recipes.length > 1 ? `, ${recipes[index % recipes.length]}` : '');
  return (
    <ol className="soft">
      {next.value.map(({ day, index }) => (
        <li key={day}>
          {showDayShort(day, today)}
          {turn(index)}
        </li>
      ))}
    </ol>
  );
}
