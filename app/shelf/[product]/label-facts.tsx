import type { Product, Shop } from '@/lib/engine/shop';
import { showWarmth } from '@/shared/forms/celsius';
import { showMinutes, showNumber } from '@/shared/measure/show';
import styles from '../../_parts/facts.module.css';

type Units = Shop['units'];
type Label = { product: Product; units: Units; modes: string[]; doubts: string[] };

/** The product's own label, as somebody typed it in. What was never entered says so. */
export function LabelFacts({ product, modes, doubts, units }: Label) {
  return (
    <>
      <dl className={styles.facts}>
        {factsOf(product, modes, units).map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd className={value === null ? 'grave' : undefined}>{value ?? 'not known'}</dd>
          </div>
        ))}
      </dl>
      {doubts.map((doubt) => (
        <p key={doubt} className="small">
          {doubt}
        </p>
      ))}
    </>
  );
}

function factsOf(product: Product, modes: string[], units: Units): [string, string | null][] {
  const { contents, label, shelfLife, densityGPerMl, gtins } = product;
  const { rates, rei, phiDays, maxApplicationsPerYear, minDaysBetween, sprayPh } = label;
  return [
    ...rates.map(({ use, min, max }): [string, string] => [
      `Rate, ${use}`,
      `${min?.text ?? 'any'} to ${max?.text ?? 'any'}`,
    ]),
    ['People keep out for', rei === null ? null : showMinutes(rei)],
    ['Before harvest', phiDays === null ? null : `${phiDays} days`],
    [
      'Most in 365 days',
      maxApplicationsPerYear === null ? 'no limit entered' : `${maxApplicationsPerYear} applications`,
    ],
    ['Between two', minDaysBetween === null ? 'no limit entered' : `at least ${minDaysBetween} days`],
    ['Mode of action', listed(modes)],
    ['Signal word', label.signalWord ?? 'none entered'],
    ['To wear', listed(label.protectiveEquipment)],
    ['Spray pH', sprayPh ? `${sprayPh.min} to ${sprayPh.max}` : 'no range entered'],
    ['Not sprayed above', label.hotAboveC === null ? 'no limit entered' : showWarmth(label.hotAboveC, units)],
    ['Never in one tank with', listed(label.doNotMixWith)],
    ['Contents', listed(contents.map(({ substance, amount, basis }) => `${substance} ${amount} ${basis}`))],
    ['Keeps unopened', shelfLife.unopenedDays === null ? null : `${shelfLife.unopenedDays} days`],
    ['Keeps opened', shelfLife.openedDays === null ? null : `${shelfLife.openedDays} days`],
    ['Density', densityGPerMl === null ? 'not entered' : `${densityGPerMl} g/mL`],
    ...spoonOf(product),
    ['Registration', label.registration ?? 'none entered'],
    ['Bar codes', listed(gtins)],
  ];
}

/** Only a powder is measured by the spoon and paid for by weight. */
const spoonOf = ({ form, gramsPerTeaspoon }: Product): [string, string | null][] =>
  form === 'powder'
    ? [['A level teaspoon', gramsPerTeaspoon === null ? null : `${showNumber(gramsPerTeaspoon)} g`]]
    : [];

const listed = (words: string[]): string => (words.length === 0 ? 'none entered' : words.join(', '));
