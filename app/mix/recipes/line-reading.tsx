import type { CheckedLabel, CheckedLine, LineFault, SoldAs } from '@/lib/engine/mix/line-check';
import { showMass, showMoney, showNumber, showVolume } from '@/shared/measure/show';
import { SeverityMark } from '../../_parts/flag-lines';
import type { Ways } from '../../_parts/shown-text';
import styles from './recipe-form.module.css';

type LineReadingProps = { line: CheckedLine | LineFault; ways: Ways; fill: string };

/** What a typed line comes to: amounts, label, strength and cost; or why it cannot be read. */
export function LineReading({ line, ways, fill }: LineReadingProps) {
  if (line.kind === 'fault') return <p className={styles.fault}>{line.message}</p>;
  return (
    <>
      <p>{line.amount ? amountText(line, ways, fill) : <span className={styles.fault}>{line.missing}</span>}</p>
      <LabelSaid label={line.label} />
      {line.strength.length > 0 && (
        <p className="soft">
          {line.strength.map(({ substance, mgPerL }) => `${substance} ${mgText(mgPerL)}`).join(' · ')}
        </p>
      )}
      <p className={line.cost.perLitre === null ? styles.fault : 'soft'}>{costText(line, ways)}</p>
    </>
  );
}

export const mgText = (mgPerL: number | null): string => (mgPerL === null ? 'not known' : `${showNumber(mgPerL)} mg/L`);

const HUNDRED_SQUARE_FEET = 9.290304;

function amountText({ amount, form }: CheckedLine, { units }: Ways, fill: string): string {
  const text = (amount: number) => (form === 'liquid' ? showVolume(amount, units) : showMass(amount, units));
  if (amount && 'perSquareMetre' in amount) {
    const { perSquareMetre } = amount;
    return `${text(perSquareMetre)} on each m² · ${text(perSquareMetre * HUNDRED_SQUARE_FEET)} on 100 sq ft`;
  }
  return amount
    ? `${text(amount.perLitre)} a litre · ${text(amount.perGallon)} a gallon · ${text(amount.perFill)} a fill of ${fill}`
    : '';
}

/** What the label says beside a dose: inside it, outside it with a shape and a word, or that nobody can say. */
export function LabelSaid({ label: { ranges, fits, severity, message } }: { label: CheckedLabel }) {
  if (ranges.length === 0 && message === null)
    return <p className="soft">Label: no rate is entered, so the dose is not judged.</p>;
  if (fits) return <p className="soft">Label: {ranges.join('; ')}. Inside it.</p>;
  return (
    <p className={styles.said}>
      {severity && <SeverityMark severity={severity} />}
      <span>
        <b>{severity === 'stop' ? 'Stop:' : severity === 'warn' ? 'Look:' : 'Label:'}</b>{' '}
        {severity === 'note' && ranges.length > 0 && `${ranges.join('; ')}. `}
        {message}
      </span>
    </p>
  );
}

function costText({ cost: { perLitre, at, madeOf, missing } }: CheckedLine, { currency }: Ways): string {
  const sold = ({ pack, price, supplier }: SoldAs) => `${pack} for ${showMoney(price, currency)} from ${supplier}`;
  const sources = madeOf.map((one) => `${one.product}, ${sold(one)}`).join('; ');
  if (perLitre !== null)
    return `${showMoney(perLitre, currency)} a litre, ${at ? `at ${sold(at)}` : `made from ${sources}`}`;
  const known = at ? ` It is sold as ${sold(at)}.` : sources && ` It is made from ${sources}.`;
  return `Cost not known. ${missing ?? ''}${known}`;
}
