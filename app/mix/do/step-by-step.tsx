'use client';

import type { MixProgress } from '@/shared/mix/mix-progress';
import { screenAt } from '@/shared/mix/mix-screens';
import { AcidScreen } from './acid-screen';
import { BottlesScreen } from './bottles-screen';
import { FinishScreen } from './finish-screen';
import type { Act } from './frame';
import { MeterScreen } from './meter-screen';
import { PourScreen } from './pour-screen';
import { SentScreen } from './sent-screen';
import { SprayScreen } from './spray-screen';
import { StopsScreen } from './stops-screen';
import { TopScreen } from './top-screen';
import { useAwake } from './use-awake';
import { useBack } from './use-back';
import { WaterScreen } from './water-screen';
import { WearScreen } from './wear-screen';

/** The screen that a mix is at. */
export function StepByStep({ mix, act }: { mix: MixProgress; act: Act }) {
  useAwake();
  useBack(() => {
    if (mix.state === 'mixing') return act({ do: 'back', from: mix.at });
    // Nothing is mixed any more, and there is no screen before this one.
    location.assign('/today');
  });
  if (mix.state !== 'mixing') return <SentScreen mix={mix} act={act} />;
  const screen = screenAt(mix);
  const its = { mix, act, screen };
  switch (screen.kind) {
    case 'stops':
      return <StopsScreen {...its} />;
    case 'wear':
      return <WearScreen {...its} />;
    case 'bottles':
      return <BottlesScreen {...its} />;
    case 'water':
      return <WaterScreen {...its} fill={screen.fill} />;
    case 'pour':
      return <PourScreen key={screen.key} {...its} pour={screen} />;
    case 'acid':
      return <AcidScreen key={screen.key} {...its} fill={screen.fill} />;
    case 'meter':
      return <MeterScreen key={screen.key} {...its} fill={screen.fill} />;
    case 'top':
      return <TopScreen {...its} fill={screen.fill} />;
    case 'spray':
      return <SprayScreen {...its} fill={screen.fill} />;
    default:
      return <FinishScreen {...its} />;
  }
}
