import type { ReactNode } from 'react';
import type { MixScreen } from '@/lib/views/mix-screen';
import { showInstant } from '@/shared/time/show-day';
import { EmergencyLink } from '../../_parts/emergency-link';
import { Figure } from '../../_parts/figure';
import { FlagLines } from '../../_parts/flag-lines';
import { Jug } from '../../_parts/jug';
import { Chemistry } from './chemistry';
import { Cost } from './cost';
import { Known } from './known';
import { Pours } from './pours';
import { PrintButton } from './print-button';
import styles from './sheet.module.css';
import { Wearing } from './wearing';

export type SheetProps = { screen: MixScreen };

/** One mix on one page: what to wear, what to pour and in which order, what is in it, and what it costs. */
export function Sheet({ screen, children }: SheetProps & { children: ReactNode }) {
  return (
    <article className={styles.sheet} aria-labelledby="mix-name">
      <Head screen={screen} />
      <Wearing screen={screen} />
      {screen.flags.length > 0 && (
        <div className={styles.flags}>
          <FlagLines flags={screen.flags.filter(({ rule }) => rule !== 'measured-roughly')} />
          {/* On paper each pour says by how much it may be off, and the sheet stays one page. */}
          <div className={styles.rough}>
            <FlagLines flags={screen.flags.filter(({ rule }) => rule === 'measured-roughly')} />
          </div>
        </div>
      )}
      <Actions screen={screen} />
      <details className={styles.other}>
        <summary>Just some of the plants, another volume or another sprayer</summary>
        {children}
      </details>
      <Pours screen={screen} />
      <div className={styles.pair}>
        <div>
          <Known screen={screen} />
          <Cost screen={screen} />
        </div>
        <Chemistry screen={screen} />
      </div>
      <ToNote screen={screen} />
    </article>
  );
}

/** On paper only: a place for what is measured of each fill, when, and by whom. */
function ToNote({ screen: { fills, chemistry } }: SheetProps) {
  if (chemistry.pH.target === null) return null;
  return (
    <ul className={styles.note}>
      {Array.from({ length: Math.max(1, Math.min(fills, MOST_NOTED)) }, (_, fill) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a fill is its number.
        <li key={fill}>
          {fills > 1 && `Fill ${fill + 1} `}pH <i /> at <i /> by <i />
        </li>
      ))}
    </ul>
  );
}

/** More lines than this would not stay on the page. */
const MOST_NOTED = 8;

function Head({ screen }: SheetProps) {
  const { recipe, steps, figures, ways, sprayer, level, sprayText, fillText } = screen;
  return (
    <header className={styles.head}>
      <div>
        <h1 id="mix-name">{recipe.name}</h1>
        <p>
          <Where screen={screen} />
        </p>
      </div>
      <div className={styles.batch}>
        <Jug level={level} liquid={steps[0]?.liquid ?? 'other'} />
        <p>
          <b className={styles.volume}>
            <Figure of={figures.sprayMl} ways={ways}>
              {sprayText}
            </Figure>
          </b>
          <br />
          <Figure of={figures.fills} ways={ways} /> of{' '}
          <Figure of={figures.fill} ways={ways}>
            {fillText}
          </Figure>
          , {sprayer}
        </p>
      </div>
    </header>
  );
}

function Where({ screen }: SheetProps) {
  const { benches, plantsText, figures, ways, planned } = screen;
  const where = plantsText ?? (benches.map(({ name }) => name).join(', ') || 'no bench named');
  return (
    <>
      {where}
      {figures.plants && plantsText === null && (
        <>
          {' '}
          · <Figure of={figures.plants} ways={ways} />
        </>
      )}
      {planned && (
        <span className="soft">
          {' '}
          · planned for <span className="unbroken">{showInstant(planned.startsAt, ways.zone, ways.today)}</span>
        </span>
      )}
    </>
  );
}

function Actions({ screen: { planned, query } }: SheetProps) {
  const became = planned?.became ?? null;
  return (
    <p className={styles.actions}>
      {became === null ? (
        <a className="button" data-main="" href={`/mix/do?${query}`}>
          Mix it now, pour by pour
        </a>
      ) : (
        <b role="status">
          {became === 'done'
            ? 'This spraying is done already. To spray again, choose the recipe anew on Mix.'
            : 'This spraying was skipped. To spray after all, choose the recipe anew on Mix.'}
        </b>
      )}
      <PrintButton />
      <span>
        <EmergencyLink />
      </span>
    </p>
  );
}
