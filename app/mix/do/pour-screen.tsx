'use client';

import { useState } from 'react';
import { shopNow } from '@/app/_parts/shop-clock';
import { amountStop, expiredStop } from '@/shared/mix/amount-stop';
import { leftText } from '@/shared/mix/bottles-to-take';
import { isUnexplained } from '@/shared/mix/finish-body';
import { bottleKey, type PlanPour, type PlanProduct, productIn } from '@/shared/mix/mix-plan';
import type { MixProgress, Part } from '@/shared/mix/mix-progress';
import { plannedPour, pourIn, type Screen } from '@/shared/mix/mix-screens';
import { partsAsPlanned, pourFaults } from '@/shared/mix/poured-so-far';
import styles from './do.module.css';
import { FarOff } from './far-off';
import { FillingJug } from './filling-jug';
import { Frame, type ScreenProps } from './frame';
import { OwnAcidSaid } from './ph-said';
import { PourChange } from './pour-change';
import { StopReasons } from './stop-reasons';

type PourProps = ScreenProps & { pour: Extract<Screen, { kind: 'pour' }> };

/** One pour: how much of what, with what it is measured, out of which bottle, and why now. */
export function PourScreen({ mix, act, screen, pour }: PourProps) {
  const { fill, product, number, of } = pour;
  const noted = pourIn(mix, fill, product);
  const planned = plannedPour(mix, product);
  const its = productIn(mix.plan, product);
  const isLeftOut = noted?.done === true && noted.parts.length === 0;
  const parts = noted && noted.parts.length > 0 ? noted.parts : isLeftOut ? [] : partsAsPlanned(mix, fill, product);
  const wrong = pourFaults(mix, fill, product, parts);
  const [isOpen, setOpen] = useState(planned === null);
  const [asked, setAsked] = useState(false);
  const far = planned?.farOff ? planned : null;
  const isAskedHow = far !== null && (parts.length === 0 || isOpen);
  const stops = [amountStop(mix, product, parts), expiredStop(mix, product, parts)].filter((stop) => stop !== null);
  const isStopped = stops.some(({ rule }) => (mix.reasons[rule] ?? '').trim() === '');
  const blocked = wrong.length > 0 || (parts.length === 0 && !isLeftOut);
  const on = () => {
    if (noted && isUnexplained(mix, noted)) return setAsked(true);
    if (isLeftOut) return act({ do: 'next', from: screen.key });
    if (blocked) {
      setOpen(isOpen || far === null || parts.length > 0);
      return setAsked(true);
    }
    if (isStopped) return setAsked(true);
    if (stops.length > 0) act({ do: 'ask', stops });
    act({ do: 'poured', fill, product }, { do: 'mixing', fill, at: shopNow() }, { do: 'next', from: screen.key });
  };
  return (
    <Frame
      {...{ mix, act, screen }}
      above={
        <>
          Pour {number} of {of}
          {noted?.done && <b className={styles.already}> {isLeftOut ? 'left out' : 'poured'}</b>}
        </>
      }
      heading={its.name}
      primary={{ text: isLeftOut ? 'Left out: go on' : 'Poured and stirred', press: on }}
      other={{ text: 'Other', press: () => setOpen(!isOpen), isOpen }}
    >
      <div className={styles.beside2}>
        {isLeftOut ? <LeftOut planned={planned} /> : <Amount planned={planned} parts={noted ? parts : null} />}
        {!isAskedHow && <FillingJug level={0.5 + (0.3 * number) / of} liquid={its.liquid} />}
      </div>
      {far && isAskedHow && (
        <FarOff {...{ mix, act, fill, isLeftOut }} planned={far} isAsked={asked} other={() => setOpen(true)} />
      )}
      {isOpen && (
        <PourChange {...{ mix, act, fill, product, parts }} faults={wrong} isAsked={asked} isLeftOut={isLeftOut} />
      )}
      {!isOpen &&
        wrong.map(({ message }) => (
          <p key={message} className={styles.why} data-grave="">
            {message}
          </p>
        ))}
      <StopReasons mix={mix} act={act} stops={stops} isAsked={asked} />
      {planned?.coarse && !noted && !far && (
        <p className={styles.why} data-grave="">
          {planned.coarse}
        </p>
      )}
      {product === mix.plan.ownAcid && <OwnAcidSaid plan={mix.plan} />}
      {planned && <p className={styles.why}>{planned.why}</p>}
      {!isLeftOut && <From mix={mix} product={its} parts={parts} />}
    </Frame>
  );
}

const LeftOut = ({ planned }: { planned: PlanPour | null }) => (
  <div>
    <p className={styles.amount} data-long="">
      none
    </p>
    <Sheet planned={planned} />
  </div>
);

/** What the sheet has, beside what was done instead. */
function Sheet({ planned }: { planned: PlanPour | null }) {
  const text = planned?.measuredText ?? planned?.exactText ?? null;
  return text === null ? null : <p className="soft">The sheet has {text}.</p>;
}

/** The amount to measure, as large as the screen lets it; what was typed instead, where something was. */
function Amount({ planned, parts }: { planned: PlanPour | null; parts: Part[] | null }) {
  if (parts && parts.length > 0) {
    return (
      <div>
        <p className={styles.amount} data-long="">
          {parts.map(({ amount }) => amount || '…').join(' + ')}
        </p>
        <Sheet planned={planned} />
      </div>
    );
  }
  if (!planned)
    return (
      <p className={styles.amount} data-long="">
        Added: how much?
      </p>
    );
  const { mark, markText, measuredText } = planned;
  const text = markText ?? measuredText ?? (planned.farOff && planned.exactText);
  if (text === null) return <p className={styles.why}>{planned.missing ?? 'How much is not known.'}</p>;
  const { figure, unit } = mark ?? { figure: text, unit: '' };
  return (
    <div>
      <p className={styles.amount} data-digits={figure.length}>
        {figure} <small>{unit}</small>
      </p>
      <p className="soft">
        {planned.measuredWith ?? planned.missing}
        {markText && measuredText && markText !== measuredText && ` = ${measuredText}`}
        {planned.measuredText && planned.exactText && planned.errorText && (
          <>
            <br />
            exactly {planned.exactText} ({planned.errorText})
          </>
        )}
      </p>
    </div>
  );
}

function From({ mix, product, parts }: { mix: MixProgress; product: PlanProduct; parts: Part[] }) {
  const short = plannedPour(mix, product.id)?.shortText;
  return (
    <div className={styles.why} data-good="">
      {parts.map(({ bottle, amount, heldMore }, at) => {
        const known = bottle && product.bottles.find((one) => bottleKey(one) === bottleKey(bottle));
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: the lines are told apart by their place alone.
          <p key={at}>
            {parts.length > 1 && <b>{amount}: </b>}
            {known ? (
              <>
                From <b className="unbroken">{known.code}</b>
                {known.expired !== null && <b className="grave"> EXPIRED {known.expired}</b>}
                {known.keptIn && `, in ${known.keptIn}`}; the books have {leftText(known, product)} in it
                {heldMore && ', and it held more'}.
              </>
            ) : (
              'From a bottle that is not in the books.'
            )}
          </p>
        );
      })}
      {short && <p>The books are {short} short of what all of this mix takes.</p>}
    </div>
  );
}
