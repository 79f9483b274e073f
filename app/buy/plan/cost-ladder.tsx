import type { PlanScreen } from '@/lib/views/purchase-plan';
import { Figure } from '../../_parts/figure';
import styles from './plan.module.css';

const RUNGS = [
  ['packs', 'Packs'],
  ['freight', '+ freight'],
  ['capital', '+ money tied up'],
  ['left', '− left, and still to be used'],
  ['total', 'In all'],
  ['ofWhichWaste', 'of the packs, what will die'],
] as const;

/** What the plan costs, rung by rung. What will die is inside the packs, and stands apart. */
export function CostLadder({ screen: { cost, ways } }: { screen: PlanScreen }) {
  return (
    <section aria-labelledby="cost">
      <h2 id="cost">What it comes to</h2>
      <table>
        <tbody>
          {RUNGS.map(([rung, name]) => (
            <tr key={rung} className={rung === 'ofWhichWaste' ? 'soft' : undefined}>
              <th scope="row">{name}</th>
              <td className={`number ${styles.sum}`}>
                {rung === 'total' ? (
                  <b>
                    <Figure of={cost[rung]} ways={ways} />
                  </b>
                ) : (
                  <Figure of={cost[rung]} ways={ways} />
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** What always buying one kind of pack would come to instead. */
export function Habits({ screen: { habits, ways } }: { screen: PlanScreen }) {
  return (
    <section aria-labelledby="habits">
      <h2 id="habits">By habit instead</h2>
      <table>
        <tbody>
          {habits.map(({ name, cost, more, isDearer }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className={`number ${styles.sum}`}>
                <Figure of={cost} ways={ways} />
              </td>
              <td>
                {isDearer ? (
                  <>
                    <Figure of={more} ways={ways} /> more
                  </>
                ) : (
                  <Figure of={more} ways={ways} isSentence>
                    as much as this plan
                  </Figure>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
