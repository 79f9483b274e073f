import { doorRoute } from '@/lib/door/door-route';
import { shopFileAnswer } from '@/lib/views/documents';
import { ShopQuestion } from '@/shared/api/questions';
import type { ShopFile } from '@/shared/shop-file/contract';

/** The export: the whole shop as a file to save. */
export const GET = doorRoute(
  { query: ShopQuestion, saveAs: (file: ShopFile) => `${file.shop.name}.shop.json` },
  ({ query }) => shopFileAnswer(query),
);
