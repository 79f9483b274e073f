import { readSize, stockOf } from '@/shared/measure/size';
import type { Stock } from '@/shared/quantity/amounts';
import type { ShopFile } from '@/shared/shop-file/contract';

type Measures = Pick<ShopFile['products'][number], 'form' | 'densityGPerMl' | 'gramsPerTeaspoon'>;

/** What a container of a lot holds when full. Null when the product's density or spoon weight is missing for that. */
export function packOf(pack: string, product: Measures): Stock | null {
  const size = readSize(pack, product.form);
  return size.ok ? stockOf(size.value, product) : null;
}
