import { clock } from '@/lib/clock';
import { tellSpraying } from '@/lib/commands/tell-spraying';
import { doorRoute } from '@/lib/door/door-route';
import { askedShop } from '@/lib/views/asked-shop';
import { NoQuestion } from '@/shared/api/questions';
import { SprayingBody } from '@/shared/api/spraying-bodies';

/** A spraying was begun, or its last plant is sprayed: its benches are closed from then on. */
export const POST = doorRoute({ may: 'spray', query: NoQuestion, body: SprayingBody }, async ({ body, visitor }) => {
  const { shop: asked, ...told } = body;
  const shop = await askedShop(asked);
  return shop.ok ? tellSpraying({ ...told, shopId: shop.value.id, actor: visitor.actor }, clock) : shop;
});
