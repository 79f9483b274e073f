import type { AcidSeen, MixChemistrySeen, OwnAcidSeen } from '@/lib/views/mix-chemistry-seen';
import { showNumber, showPh } from '@/shared/measure/show';
import { Figure } from '../../_parts/figure';
import type { Ways } from '../../_parts/shown-text';
import type { SheetProps } from './sheet';
import styles from './sheet.module.css';

type PartProps = { chemistry: MixChemistrySeen; ways: Ways };

/** How strong it is, how to bring it to its pH, whether it may burn, and what nobody knows about it. */
export function Chemistry({ screen: { chemistry, ways } }: SheetProps) {
  return (
    <section aria-labelledby="chemistry">
      <h2 id="chemistry">What is in it</h2>
      <Strengths chemistry={chemistry} ways={ways} />
      <h3>pH</h3>
      <Acidity chemistry={chemistry} ways={ways} />
      <h3>Conductivity, estimated</h3>
      <Conductivity chemistry={chemistry} ways={ways} />
      {chemistry.unknown.length > 0 && (
        <>
          <h3>Not known</h3>
          <ul className={styles.notes}>
            {chemistry.unknown.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function Strengths({ chemistry: { actives, elements }, ways }: PartProps) {
  if (actives.length === 0 && elements.length === 0) return <p>No label here names what is in it.</p>;
  return (
    <ul className={styles.strengths}>
      {elements.map(({ element, strength, oxide }) => (
        <li key={element}>
          {element} <Figure of={strength} ways={ways} />
          {oxide && (
            <span className="soft">
              {' '}
              = {oxide.name} <Figure of={oxide.strength} ways={ways} />
            </span>
          )}
        </li>
      ))}
      {actives.map(({ substance, strength }) => (
        <li key={substance}>
          {substance} <Figure of={strength} ways={ways} />
        </li>
      ))}
    </ul>
  );
}

function Acidity({ chemistry, ways }: PartProps) {
  const { pH, acids, own, correction } = chemistry;
  return (
    <div className={styles.acidity}>
      <p>
        Before any acid <Figure of={pH.beforeFig} ways={ways} />
        {pH.target === null ? ', and the recipe has no target.' : `, target pH ${showPh(pH.target)}.`}
        {pH.message && ` ${pH.message}`}
      </p>
      {own && <Own own={own} ways={ways} />}
      {acids.length > 0 && (
        <>
          <p>
            {own ? 'Beside it, any' : 'Any'} one of these, by estimate. Pour in two thirds, stir, measure, then go on by
            drops.
          </p>
          <ul className={styles.notes}>
            {acids.map((acid) => (
              <Acid key={acid.product.id} acid={acid} ways={ways} />
            ))}
          </ul>
        </>
      )}
      {correction && acids.length > 0 && (
        <p>
          {correction.readings} pH readings of this shop say <Figure of={correction.factor} ways={ways} />
          {correction.beyondBounds
            ? `, and more than a correction may give (${correction.least} to ${correction.most}): measure the water again.`
            : ` (never less than ${correction.least} or more than ${correction.most}).`}
        </p>
      )}
    </div>
  );
}

/** An acid that stands among the pours is not poured a second time for the pH. */
function Own({ own: { pours, pH, left, message }, ways }: { own: OwnAcidSeen; ways: Ways }) {
  return (
    <p>
      <b>The recipe pours its own acid:</b>{' '}
      {pours.map(({ name, amount }, number) => (
        <span key={amount.at}>
          {number > 0 && ', '}
          {name} <Figure of={amount} ways={ways} />
        </span>
      ))}
      , to <Figure of={pH} ways={ways} />
      {left && (
        <>
          ; still to add <Figure of={left} ways={ways} />
        </>
      )}
      . {message}
    </p>
  );
}

function Acid({
  acid: { product, missing, first, firstText, firstWith, expectedPh, estimate, learned, eachFill },
  ways,
}: {
  acid: AcidSeen;
  ways: Ways;
}) {
  if (!first || !expectedPh) {
    return (
      <li>
        {product.name}: <span className="grave">not known.</span> {missing}
      </li>
    );
  }
  if (eachFill) {
    return (
      <li>
        {product.name}: <b>first {eachFill.first} in each fill</b>
        {firstWith && ` (${firstWith})`}, expect <Figure of={expectedPh} ways={ways} />; in all about {eachFill.all} in
        each fill. For all fills together <Figure of={first} ways={ways} /> and{' '}
        <Figure of={learned ?? estimate} ways={ways} />.
      </li>
    );
  }
  return (
    <li>
      {product.name}:{' '}
      <b>
        first{' '}
        <Figure of={first} ways={ways}>
          {firstText}
        </Figure>
      </b>
      {firstWith && ` (${firstWith})`}, expect <Figure of={expectedPh} ways={ways} />; in all about{' '}
      <Figure of={estimate} ways={ways} />
      {learned && (
        <>
          , by your readings <Figure of={learned} ways={ways} />
        </>
      )}
    </li>
  );
}

function Conductivity({ chemistry: { conductivity }, ways }: PartProps) {
  const { value, atLeast, limit, overLimit } = conductivity;
  return (
    <p>
      <Figure of={value} ways={ways} />
      {value.value.kind === 'unknown' && `; at least ${showNumber(atLeast)} mS/cm`}
      {limit === null && '. The shop has set no limit.'}
      {limit !== null && overLimit && (
        <b className="grave"> Above the shop's limit of {showNumber(limit)} mS/cm: leaves may burn. Try it on a few.</b>
      )}
      {limit !== null && overLimit === false && `, below the shop's limit of ${showNumber(limit)} mS/cm.`}
      {limit !== null &&
        overLimit === null &&
        `. Whether it is above the limit of ${showNumber(limit)} nobody can say.`}
    </p>
  );
}
