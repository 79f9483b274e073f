import type { PriceLine } from '@/lib/views/offer';
import { showMoney } from '@/shared/measure/show';
import { showDayShort } from '@/shared/time/show-day';
import { ColumnHeads } from '../../../_parts/column-heads';
import type { Ways } from '../../../_parts/shown-text';

type PriceTableProps = { history: PriceLine[]; unit: string; ways: Ways };

/** Every price that an offer had, the newest first, and whether it was dearer or cheaper than the one before. */
export function PriceTable({ history, unit, ways }: PriceTableProps) {
  const money = (micros: number) => showMoney(micros, ways.currency);
  const lines = history.map((line, number) => ({ line, number })).reverse();
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard.
    <section className="sideways" tabIndex={0} aria-label="Prices as a table">
      <table>
        <ColumnHeads of={['From', { number: 'A pack' }, { number: `A ${unit}` }, 'Beside the one before']} />
        <tbody>
          {lines.map(({ line: { since, price, breaks, unitPrice, risen }, number }) => (
            <tr key={number}>
              <th scope="row">
                {since === null ? 'not noted' : showDayShort(since, ways.today)}
                {number === history.length - 1 && <span className="soft">, now</span>}
              </th>
              <td className="number">
                {money(price)}
                {breaks.map(({ atLeast, price }) => (
                  <span key={atLeast} className="soft">
                    <br />
                    {money(price)} from {atLeast}
                  </span>
                ))}
              </td>
              <td className="number">{unitPrice === null ? 'too large' : money(unitPrice)}</td>
              <td>{risenText(risen, money)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function risenText(risen: number | null, money: (micros: number) => string): string {
  if (risen === null) return 'the first one noted';
  if (risen === 0) return 'the same';
  return risen > 0 ? `▲ ${money(risen)} dearer` : `▼ ${money(-risen)} cheaper`;
}
