import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { askedShop } from '@/lib/views/asked-shop';
import { mixJudged } from '@/lib/views/mix-judged';
import { NoQuestion } from '@/shared/api/questions';
import { JudgeBody } from '@/shared/api/spraying-bodies';

/** The rules that say stop to a mix sprayed this minute. It changes nothing, and is a POST because benches are many. */
export const POST = doorRoute(
  { may: 'see-shop', query: NoQuestion, body: JudgeBody, looks: true },
  async ({ body }) => {
    const { shop: asked, ...judged } = body;
    const shop = await askedShop(asked);
    return shop.ok ? mixJudged({ ...judged, shopId: shop.value.id }, clock) : shop;
  },
);
