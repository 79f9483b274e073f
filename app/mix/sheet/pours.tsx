import type { BottleToTake, MixPour, TooCoarse } from '@/lib/views/mix-pours';
import type { MixScreen } from '@/lib/views/mix-screen';
import { Figure } from '../../_parts/figure';
import type { Ways } from '../../_parts/shown-text';
import styles from './pours.module.css';
import type { SheetProps } from './sheet';

/** Everything that goes in, in its order: water, each pour with its reason, and water up to the volume. */
export function Pours({ screen }: SheetProps) {
  const { steps, fills, figures, ways, fillText, waterFirstText } = screen;
  return (
    <section aria-labelledby="pours">
      <h2 id="pours">{fills === 1 ? 'What goes in' : `What goes into each of the ${fills} fills`}</h2>
      <ol className={styles.pours}>
        <li className={styles.water}>
          <span className={styles.tick} aria-hidden="true" />
          <span>
            <b>Water first:</b>{' '}
            <Figure of={figures.waterFirst} ways={ways}>
              {waterFirstText}
            </Figure>
            . Stir from here on, until each is fully mixed before the next.
          </span>
        </li>
        {steps.map((step) => (
          <Pour key={step.order} step={step} screen={screen} />
        ))}
        <li className={styles.water}>
          <span className={styles.tick} aria-hidden="true" />
          <span>
            <b>Fill up with water</b> to {fillText}, and keep stirring.
          </span>
        </li>
      </ol>
    </section>
  );
}

function Pour({ step, screen }: { step: MixPour; screen: MixScreen }) {
  const { ways } = screen;
  const { order, product, dose, why, orderOverridden, tooCoarse } = step;
  return (
    <li className={styles.pour}>
      <span className={styles.tick}>{order}</span>
      <div className={styles.what}>
        <p>
          <a className={styles.name} href={`/shelf/${encodeURIComponent(product.id)}`}>
            {product.name}
          </a>{' '}
          <span className={styles.dose}>{dose}</span>
        </p>
        <p className={styles.why}>
          {orderOverridden && <b>Not the usual place. </b>}
          {why}
        </p>
      </div>
      <Amount step={step} ways={ways} />
      <Bottles step={step} screen={screen} />
      {tooCoarse && <Coarse coarse={tooCoarse} step={step} screen={screen} />}
    </li>
  );
}

function Amount({ step, ways }: { step: MixPour; ways: Ways }) {
  const { figures, measured, missing } = step;
  if (!measured) {
    return (
      <p className={styles.amount}>
        <b className={styles.big}>
          <Figure of={figures.perFill} ways={ways} />
        </b>
        <span className={styles.missing}>{missing}</span>
      </p>
    );
  }
  // So far off, the marks of the measure would mislead whoever reads only the large figure.
  if (measured.isFarOff) {
    return (
      <p className={styles.amount}>
        <b className={styles.big}>
          <Figure of={figures.perFill} ways={ways} />
        </b>
        <span className={styles.missing}>
          Nothing here measures that. The nearest, {measured.with}, is off by{' '}
          {figures.error && (
            <Figure of={figures.error} ways={ways}>
              {measured.errorText}
            </Figure>
          )}
          : do not pour it.
        </span>
      </p>
    );
  }
  return (
    <p className={styles.amount}>
      <b className={styles.big}>
        {figures.measured && (
          <Figure of={figures.measured} ways={ways}>
            {measured.mark}
          </Figure>
        )}
      </b>
      <span>{measured.with}</span>
      <span className="soft">
        exactly <Figure of={figures.perFill} ways={ways} />
        {figures.error && measured.errorText !== 'exact' && (
          <>
            , off by{' '}
            <Figure of={figures.error} ways={ways}>
              {measured.errorText}
            </Figure>
          </>
        )}
      </span>
    </p>
  );
}

function Bottles({ step: { bottles, shortText }, screen: { ways } }: { step: MixPour; screen: MixScreen }) {
  return (
    <ul className={styles.bottles}>
      {bottles.map((bottle) => (
        <Bottle key={bottle.href} bottle={bottle} ways={ways} />
      ))}
      {shortText && (
        <li>
          <b className="grave">Short by {shortText}:</b> no bottle that may be used has it.
        </li>
      )}
    </ul>
  );
}

function Bottle({ bottle: { href, code, keptIn, figures }, ways }: { bottle: BottleToTake; ways: Ways }) {
  return (
    <li>
      <a href={href}>{code}</a> {keptIn && `in ${keptIn}, `}
      <Figure of={figures.left} ways={ways} /> left, take{' '}
      <b>
        <Figure of={figures.take} ways={ways} />
      </b>
    </li>
  );
}

type CoarseProps = { coarse: TooCoarse; step: MixPour; screen: MixScreen };

/** What to do where the shop's own measures are off by more than the tolerance. */
function Coarse({ coarse: { biggerBatch, stockSolution }, step, screen }: CoarseProps) {
  const { product, measured } = step;
  return (
    <p className={styles.coarse}>
      <b>More than 5 % off.</b>{' '}
      {biggerBatch && (
        <>
          Mix{' '}
          <a href={`/mix/sheet?${biggerQuery(screen, biggerBatch.ml)}`}>
            {biggerBatch.text} {screen.fills > 1 ? 'in each fill' : 'or more'}
          </a>
          {stockSolution ? ', or make ' : '.'}
        </>
      )}
      {stockSolution && (
        <>
          {!biggerBatch && 'Make '}
          <a
            href={`/mix/stock?${new URLSearchParams({
              product: product.id,
              amount: stockSolution.productText,
              make: stockSolution.makeUpToText,
              recipe: screen.recipe.id,
            })}`}
          >
            a stock solution
          </a>{' '}
          for {stockSolution.batches} fills: {stockSolution.productText} ({stockSolution.productWith}) made up with
          water to {stockSolution.makeUpToText}; {stockSolution.useText} of it, {stockSolution.useWith}, is one pour.
        </>
      )}
      {!biggerBatch && !stockSolution && `Nothing that the shop measures with comes nearer. ${measured?.with ?? ''}`}
    </p>
  );
}

/** The same mix as a volume of which every fill is large enough. */
function biggerQuery({ query, fills }: MixScreen, fillMl: number): string {
  const pairs = new URLSearchParams(query);
  pairs.delete('plants');
  pairs.set('volume', `${fillMl * fills} mL`);
  return pairs.toString();
}
