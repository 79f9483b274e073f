import { clock } from '@/lib/clock';
import { denySpraying } from '@/lib/commands/deny-spraying';
import { doorRoute } from '@/lib/door/door-route';
import { askedShop } from '@/lib/views/asked-shop';
import { NoQuestion } from '@/shared/api/questions';
import { NeverSprayedBody } from '@/shared/api/spraying-bodies';

/** A spraying that was begun never came to be. Its benches would open at once, so a confirmation is asked for. */
export const POST = doorRoute(
  { may: 'spray', query: NoQuestion, body: NeverSprayedBody },
  async ({ body, visitor }) => {
    const { shop: asked, ...denied } = body;
    const shop = await askedShop(asked);
    return shop.ok ? denySpraying({ ...denied, shopId: shop.value.id, actor: visitor.actor }, clock) : shop;
  },
);
