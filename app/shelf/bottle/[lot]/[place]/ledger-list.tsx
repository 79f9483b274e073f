import type { LedgerLine } from '@/lib/views/bottle-ledger';
import { showMoneyIfKnown, showStock } from '@/shared/measure/show';
import { showDay, showInstant } from '@/shared/time/show-day';
import { dayOf } from '@/shared/time/zone';
import type { Ways } from '../../../../_parts/shown-text';
import type { About } from './bottle-form';
import styles from './ledger-list.module.css';
import { TakeBackForm } from './stock-forms';
import { whatText } from './what-text';

type LedgerListProps = { lines: LedgerLine[]; about: About; form: 'liquid' | 'powder'; ways: Ways };

/** Everything that ever happened to a bottle, in the order in which it was written down. Nothing is ever struck out. */
export function LedgerList({ lines, about, form, ways }: LedgerListProps) {
  return (
    <>
      <p className={styles.head} aria-hidden="true">
        <span>What happened</span>
        <span className="number">In or out</span>
        <span className="number">Left after it</span>
        <span className="number">Of the price</span>
      </p>
      <ol className={styles.ledger}>
        {lines.map((line) => (
          <li
            key={line.line}
            id={`line-${line.line}`}
            className={styles.line}
            data-back={line.takenBackBy !== null || undefined}
          >
            <Happened line={line} ways={ways} />
            <Moved line={line} form={form} ways={ways} />
            <Beside line={line} lines={lines} ways={ways} />
            {line.moved && line.takesBack === null && (
              <TakeBackForm
                about={about}
                line={line.line}
                movement={line.movement ?? ''}
                reversible={line.reversible}
              />
            )}
          </li>
        ))}
      </ol>
    </>
  );
}

function Happened({ line, ways }: { line: LedgerLine; ways: Ways }) {
  const { happened, recordedAt, actor, reason, takenBackBy } = line;
  const { zone, today } = ways;
  const on = happened.dayAlone ? showDay(dayOf(zone, happened.at), today) : showInstant(happened.at, zone, today);
  const written =
    happened.at === recordedAt ? 'written down then' : `written down ${showInstant(recordedAt, zone, today)}`;
  const what = whatText(line.what, today);
  return (
    <div className={styles.what}>
      <p>
        <span className={styles.number}>{line.line}</span>
        {takenBackBy === null ? <b>{what}</b> : <s>{what}</s>}
        {reason !== null && <span>: {reason}</span>}
      </p>
      <p className={styles.when}>
        {on} · {written} · {actor}
      </p>
    </div>
  );
}

function Moved({
  line: { moved, takenBackBy },
  form,
  ways,
}: {
  line: LedgerLine;
  form: 'liquid' | 'powder';
  ways: Ways;
}) {
  if (!moved) return null;
  const amount = `${moved.out ? '−' : '+'} ${showStock(moved.amount, form, ways.units)}`;
  return (
    <dl className={styles.amounts}>
      <div>
        <dt>{moved.out ? 'out' : 'in'}</dt>
        <dd>{takenBackBy === null ? amount : <s>{amount}</s>}</dd>
      </div>
      <div>
        <dt>left after it</dt>
        <dd>{showStock(moved.left, form, ways.units)}</dd>
      </div>
      <div>
        <dt>of the price</dt>
        <dd>{showMoneyIfKnown(moved.cost, ways.currency)}</dd>
      </div>
    </dl>
  );
}

/** The line that takes this one back, or the one that it takes back, with who and why. */
function Beside({ line, lines, ways }: { line: LedgerLine; lines: LedgerLine[]; ways: Ways }) {
  const back = lines.find((one) => one.line === line.takenBackBy);
  if (back) {
    const at = showInstant(back.recordedAt, ways.zone, ways.today);
    return (
      <p className={styles.beside}>
        ↩ <a href={`#line-${back.line}`}>Taken back in line {back.line}</a> by {back.actor}, {at}
        {back.reason !== null && `: ${back.reason}`}
      </p>
    );
  }
  if (line.takesBack === null) return null;
  return (
    <p className={styles.beside}>
      ↩ <a href={`#line-${line.takesBack}`}>Takes line {line.takesBack} back</a>
    </p>
  );
}
