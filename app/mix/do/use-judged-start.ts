'use client';

import { useState } from 'react';
import { judgeMix } from '@/app/_parts/judge-mix';
import { deviceAhead, shopNow } from '@/app/_parts/shop-clock';
import { sprayedText, stopsOf } from '@/shared/mix/finish-body';
import type { MixProgress } from '@/shared/mix/mix-progress';
import type { Act } from './frame';

/**
 * The start of a spraying, judged as of this minute and these benches: where a rule says stop, somebody says why first.
 * Without an answer of the shop what is known already counts.
 *
 * Gives    the rules that want a reason still, whether somebody was asked for one, and the way to start
 */
export function useJudgedStart(mix: MixProgress, act: Act) {
  const [isAsked, setAsked] = useState(false);
  const [isJudging, setJudging] = useState(false);
  const isOpen = ({ rule }: { rule: string }) => (mix.reasons[rule] ?? '').trim() === '';
  const open = stopsOf(mix).filter(isOpen);
  const start = async () => {
    if (isJudging) return;
    if (open.length > 0) return setAsked(true);
    setJudging(true);
    const { shopId: shop, recipe } = mix.plan;
    const asked = { shop, recipe: recipe.id, benches: mix.benches, sprayed: sprayedText(mix), spraying: mix.commandId };
    const stops = (await judgeMix(asked)) ?? [];
    setJudging(false);
    if (stops.length > 0) act({ do: 'ask', stops });
    if (stops.some(isOpen)) return setAsked(true);
    act({ do: 'spraying', since: shopNow(), ahead: deviceAhead() });
  };
  return { open, isAsked, isJudging, start };
}
