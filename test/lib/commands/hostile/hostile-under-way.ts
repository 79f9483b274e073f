import { denySpraying } from '@/lib/commands/deny-spraying';
import { tellSpraying } from '@/lib/commands/tell-spraying';
import { withConfirmation } from '@/lib/confirmation';
import { newId } from '@/lib/data/new-id';
import type { Outcome } from '@/shared/outcome';
import type { Instant } from '@/shared/time/instant';
import { CLOCK } from '../../data/fresh-database';
import type { Fields } from './hostile-values';

const hour = (number: number): number => Date.UTC(2026, 2, 31) + number * 3_600_000;
const sent = (shopId: string) => ({ commandId: newId(), shopId });

const toldBy = (any: Fields, shopId: string) => ({
  ...{ ...sent(shopId), spraying: any.id('w'), recipe: any.id('r'), benches: any.ids(['b']), planned: null },
  ...{ startedAt: any.moment(hour(-1)), endedAt: any.moment(hour(0)), by: any.text('Ada') },
  passed: [{ rule: any.text('too-soon'), reason: any.text('needed') }],
});

/** What is told of a spraying that is under way, with fields of the fuzzer's choice. */
export const UNDER_WAY: Record<string, (any: Fields, shopId: string) => Promise<Outcome<unknown>>> = {
  'tell-spraying': (any, shopId) => tellSpraying(toldBy(any, shopId), CLOCK),
  'deny-spraying': async (any, shopId) => {
    const told = { ...sent(shopId), spraying: 'w', recipe: 'r', benches: ['b'], planned: null, passed: [], by: null };
    await tellSpraying({ ...told, startedAt: hour(-1) as Instant, endedAt: null }, CLOCK);
    const said = { ...sent(shopId), spraying: any.id('w'), reason: any.text('it rained') };
    const deny = () => denySpraying(said, CLOCK);
    const asked = await deny();
    if (asked.ok || asked.refusal.code !== 'opens-earlier') return asked;
    return withConfirmation({ token: asked.refusal.token, reason: 'looked' }, deny);
  },
};
