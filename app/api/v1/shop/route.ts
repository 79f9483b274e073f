import { doorRoute } from '@/lib/door/door-route';
import { shopFileAsked } from '@/lib/threads/answers';
import { ShopQuestion } from '@/shared/api/questions';
import { Written } from '@/shared/json/written';
import type { ShopFile } from '@/shared/shop-file/contract';

/** The export: the whole shop as a file to save. */
export const GET = doorRoute(
  {
    may: 'own',
    query: ShopQuestion,
    saveAs: (file: ShopFile | Written) => `${file instanceof Written ? file.name : file.shop.name}.shop.json`,
  },
  ({ query, signal }) => shopFileAsked(query, signal),
);
