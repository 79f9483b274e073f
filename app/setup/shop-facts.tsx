import type { ShopFile } from '@/shared/shop-file/contract';
import { WEEKDAYS } from '@/shared/time/day';
import styles from '../_parts/facts.module.css';

type ShopFactsProps = { settings: ShopFile['shop']; counts: [what: string, count: number][] };

/** What the shop says about itself, as it was typed in. */
export function ShopFacts({ settings, counts }: ShopFactsProps) {
  return (
    <dl className={styles.facts}>
      {factsOf(settings).map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
      <div>
        <dt>Holds</dt>
        <dd>{counts.map(([what, count]) => `${count} ${what}`).join(', ')}</dd>
      </div>
    </dl>
  );
}

function factsOf(settings: ShopFile['shop']): [string, string][] {
  const { water, wagePerHour, currency } = settings;
  return [
    ['Time zone', settings.timeZone],
    ['Currency', currency],
    ['Units', settings.units === 'us' ? 'US' : 'metric'],
    ['Open', openingText(settings.openingHours)],
    ['Sprayer holds', settings.fillCapacity],
    ['Lost in each fill', settings.lossPerFill],
    ['Measuring step', settings.measuringStep],
    ['Water', water ? `alkalinity ${water.alkalinityMgPerLCaCO3} mg/L as CaCO3, pH ${water.pH}` : 'not measured yet'],
    ['Safety days', `${settings.safetyDays} ${settings.safetyDays === 1 ? 'day' : 'days'}`],
    ['Wage', wagePerHour === null ? 'not entered, so labour is not known' : `${wagePerHour} ${currency} an hour`],
    ['Same mode of action', `at most ${settings.sameModeInARow} in a row on a bench`],
    ['Money tied up costs', `${settings.capitalPerYear * 100} % a year`],
  ];
}

const DAY_NAMES = { mon: 'Mon', tue: 'Tue', wed: 'Wed', thu: 'Thu', fri: 'Fri', sat: 'Sat', sun: 'Sun' };

/** Days in a row with the same hours are said once: "Mon to Fri 09:00–18:00; Sat 10:00–16:00". */
function openingText(hours: ShopFile['shop']['openingHours']): string {
  const runs: { from: string; to: string; hours: string }[] = [];
  for (const day of WEEKDAYS) {
    const text = hours[day].map(([from, until]) => `${from}–${until}`).join(' and ');
    const last = runs.at(-1);
    if (last && last.hours === text) last.to = DAY_NAMES[day];
    else runs.push({ from: DAY_NAMES[day], to: DAY_NAMES[day], hours: text });
  }
  const open = runs.filter((run) => run.hours !== '');
  if (open.length === 0) return 'never, as entered';
  return open.map(({ from, to, hours: text }) => `${from === to ? from : `${from} to ${to}`} ${text}`).join('; ');
}
