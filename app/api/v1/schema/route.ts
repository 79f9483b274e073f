import { doorRoute } from '@/lib/door/door-route';
import { NoQuestion } from '@/shared/api/questions';
import { accept } from '@/shared/outcome';
import { shopFileSchema } from '@/shared/shop-file/json-schema';

export const GET = doorRoute({ may: 'open', query: NoQuestion }, async () => accept(shopFileSchema()));
