'use client';

import type { MixPlan } from '@/shared/mix/mix-plan';
import { productIn } from '@/shared/mix/mix-plan';
import styles from './do.module.css';

/** What to settle before the first pour: what nothing here measures, what is short, expired or not there, and what to have at hand. */
export function Ready({ plan }: { plan: MixPlan }) {
  const troubles = [...plan.pours.flatMap((pour) => troublesOf(plan, pour)), ...acidTroubles(plan)];
  return (
    <>
      {troubles.map((trouble) => (
        <p key={trouble} className={styles.why} data-grave="">
          {trouble}
        </p>
      ))}
      <p className={styles.why} data-good={troubles.length === 0 ? '' : undefined}>
        <b>At hand:</b> {plan.waterFirstText} of water and as much again to fill up to {plan.fillText}
        {plan.pH && '; a pH meter, or strips'}
        {measuresOf(plan)}.
      </p>
    </>
  );
}

function measuresOf({ pours, acids }: MixPlan): string {
  // A plan that a device has kept from before the tools were told has them in a sentence.
  const measures = [
    ...new Set([
      ...pours.flatMap(({ tools, measuredWith }) => tools ?? measuredWith ?? []),
      ...acids.slice(0, 1).flatMap(({ firstTool, firstWith }) => firstTool ?? firstWith ?? []),
    ]),
  ];
  return measures.length === 0 ? '' : `; to measure with: ${measures.join(', ')}`;
}

/** The first acid is what the screen of the acid begins with. */
function acidTroubles(plan: MixPlan): string[] {
  const [acid] = plan.acids;
  if (!acid || acid.firstText === null || acid.firstWith !== null) return [];
  return [`${productIn(plan, acid.product).name}: nothing here measures ${acid.firstText} of it for the pH.`];
}

function troublesOf(plan: MixPlan, { product, farOff, missing, shortText }: MixPlan['pours'][number]): string[] {
  const { name, bottles } = productIn(plan, product);
  const usable = bottles.filter(({ expired }) => expired === null);
  return [
    ...(farOff === null ? [] : [`${name}: ${farOff}`]),
    ...(missing === null ? [] : [`${name}: ${missing}`]),
    ...(bottles.length === 0 ? [`${name}: no bottle of it is in the books.`] : []),
    ...(bottles.length > 0 && usable.length === 0
      ? [`${name}: EXPIRED, every bottle of it is past its last day.`]
      : []),
    ...(shortText === null ? [] : [`${name}: the books are ${shortText} short of what this takes.`]),
  ];
}
