'use client';

import { useEffect, useRef, useState } from 'react';
import { judgeMix } from '@/app/_parts/judge-mix';
import { act, keepMix, useKeptMixes } from '@/app/_parts/kept-mixes';
import { shopNow, useShopClock } from '@/app/_parts/shop-clock';
import { tellSpraying } from '@/app/_parts/tell-spraying';
import { freshId } from '@/app/_parts/use-command-id';
import { useSending } from '@/app/_parts/use-sending';
import type { MixAction } from '@/shared/mix/mix-action';
import type { MixPlan } from '@/shared/mix/mix-plan';
import { beginMix } from '@/shared/mix/mix-progress';
import { untold } from '@/shared/mix/spraying-told';
import { readyForCodes } from './code-camera';
import { Gate } from './gate';
import { StepByStep } from './step-by-step';

type DoMixProps = {
  /** Null when the shop cannot work it out any more; what was begun can still be gone on with. */
  plan: MixPlan | null;
  isDone: boolean;
  told: string | null;
};

/** One mix on this device: taken up where it was left, or begun. */
export function DoMix({ plan, isDone, told }: DoMixProps) {
  const kept = useKeptMixes();
  const [current, setCurrent] = useState<string | null>(null);
  useSending();
  useShopClock(plan?.asOf ?? null);
  // The page waits for whoever had it open when it was thrown out of memory.
  const [meant, setMeant] = useState<string | null>(null);
  useEffect(() => setMeant(location.hash.slice(1) || null), []);
  const beginning = useRef(false);
  useEffect(readyForCodes, []);
  const mix = kept?.find(({ commandId }) => commandId === current) ?? null;

  const isUntold = mix !== null && untold(mix) !== null;
  useEffect(() => {
    if (isUntold && current !== null) void tellSpraying(current);
  }, [isUntold, current]);

  if (kept === null) return <p className="soft">The mix is laid out…</p>;
  if (mix) return <StepByStep mix={mix} act={(...actions: MixAction[]) => act(mix.commandId, ...actions)} />;

  const open = (commandId: string) => {
    history.replaceState(null, '', `#${commandId}`);
    setCurrent(commandId);
  };
  const begin = async (fresh: MixPlan) => {
    if (beginning.current) return;
    beginning.current = true;
    // The page may have been open for hours: what says stop is what does so this minute.
    const { shopId: shop, recipe } = fresh;
    const benches = fresh.benches.map(({ id }) => id);
    const stops = await judgeMix({ shop, recipe: recipe.id, benches, sprayed: fresh.sprayText, spraying: null });
    beginning.current = false;
    started(stops ? { ...fresh, stops } : fresh);
  };
  const started = (fresh: MixPlan) => {
    const progress = beginMix(fresh, freshId(), shopNow());
    keepMix(progress);
    open(progress.commandId);
  };
  const its = kept.filter(
    ({ commandId, state, plan: one }) =>
      commandId === meant || (state !== 'sent' && one.query === plan?.query && one.shopId === plan.shopId),
  );
  return <Gate plan={plan} isDone={isDone} told={told} kept={its} goOn={open} begin={(fresh) => void begin(fresh)} />;
}
