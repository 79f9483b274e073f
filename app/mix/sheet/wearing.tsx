import { Figure } from '../../_parts/figure';
import type { SheetProps } from './sheet';
import styles from './sheet.module.css';

/** What protects people, before anything else: what to wear, how strong the word on the labels is, how long to keep out. */
export function Wearing({ screen }: SheetProps) {
  const { equipment, equipmentUnknown, signalWord, figures, ways, reiMinutes } = screen;
  return (
    <dl className={styles.wearing}>
      <div className={styles.wear}>
        <dt>
          <Glove /> Wear
        </dt>
        <dd>
          <b>{equipment.length > 0 ? equipment.join(', ') : 'not known'}</b>
          {equipmentUnknown.length > 0 && (
            <span className="small">
              {' '}
              Nothing is entered for {equipmentUnknown.join(', ')}: read{' '}
              {equipmentUnknown.length === 1 ? 'its' : 'their'} label.
            </span>
          )}
        </dd>
      </div>
      <div>
        <dt>Signal word</dt>
        <dd>
          <b>{signalWord ?? 'none entered'}</b>
        </dd>
      </div>
      <div>
        <dt>Keep out</dt>
        <dd>
          <b className={reiMinutes === null ? 'grave' : undefined}>
            <Figure of={figures.rei} ways={ways} />
          </b>{' '}
          <span className="small">{reiMinutes === null ? 'keep out until it is' : 'after the end'}</span>
        </dd>
      </div>
      <div>
        <dt>Use within</dt>
        <dd>
          <b>
            <Figure of={figures.useWithin} ways={ways} />
          </b>
        </dd>
      </div>
    </dl>
  );
}

function Glove() {
  return (
    <svg className={styles.glove} viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      <path d="M7 22 V13 L5 9 q-.6-2 1-2.2 L9 10 V3.500 q0-1.500 1.400-1.500 t1.400 1.500 V3 q0-1.500 1.400-1.500 T14.600 3 v1 q0-1.300 1.300-1.300 T17.200 4 v2 q0-1.200 1.200-1.200 t1.200 1.200 V15 l-2 7Z" />
    </svg>
  );
}
