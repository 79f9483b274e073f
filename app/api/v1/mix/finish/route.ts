import { clock } from '@/lib/clock';
import { finishMix } from '@/lib/commands/finish-mix';
import { doorRoute } from '@/lib/door/door-route';
import { askedShop } from '@/lib/views/asked-shop';
import { FinishMixBody } from '@/shared/api/finish-mix-body';
import { NoQuestion } from '@/shared/api/questions';

/** One finished mix: stock drawn, record written, benches closed, in one step; sent again, it is answered as before. */
export const POST = doorRoute({ may: 'spray', query: NoQuestion, body: FinishMixBody }, async ({ body, visitor }) => {
  const { shop: asked, ...mix } = body;
  const shop = await askedShop(asked);
  return shop.ok ? finishMix({ ...mix, shopId: shop.value.id, actor: visitor.actor }, clock) : shop;
});
