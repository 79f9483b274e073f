import type { Collection } from './check-ids';
import type { ShopFile } from './contract';
import type { Path } from './path';
import { eachOf, type Loose } from './readable-part';

type Refers = (path: Path, collection: Collection, id: string) => void;
type Ref = (path: Path, collection: Collection, id: string | null | undefined) => void;
type Part = Loose<ShopFile>;

/** Call `refer` for every place of a file that names something else of it by its id. */
export function checkReferences(part: Part, refer: Refers): void {
  const one: Ref = (path, collection, id) => {
    if (id != null) refer(path, collection, id);
  };
  goodsReferences(part, one);
  plannedReferences(part, one);
  recordReferences(part, one);
}

function goodsReferences(part: Part, one: Ref): void {
  for (const [index, offer] of eachOf(part?.offers)) {
    one(['offers', index, 'supplier'], 'suppliers', offer.supplier);
    one(['offers', index, 'product'], 'products', offer.product);
  }
  for (const [index, { madeFrom }] of eachOf(part?.products)) {
    for (const [line, { product }] of eachOf(madeFrom)) {
      one(['products', index, 'madeFrom', line, 'product'], 'products', product);
    }
  }
  for (const [index, lot] of eachOf(part?.lots)) {
    one(['lots', index, 'product'], 'products', lot.product);
    one(['lots', index, 'order'], 'orders', lot.order);
    one(['lots', index, 'offer'], 'offers', lot.offer);
  }
  for (const [index, order] of eachOf(part?.orders)) {
    one(['orders', index, 'supplier'], 'suppliers', order.supplier);
    for (const [line, { offer }] of eachOf(order.lines)) {
      one(['orders', index, 'lines', line, 'offer'], 'offers', offer);
    }
  }
}

function plannedReferences(part: Part, one: Ref): void {
  for (const [index, recipe] of eachOf(part?.recipes)) {
    for (const [line, { product }] of eachOf(recipe.ingredients)) {
      one(['recipes', index, 'ingredients', line, 'product'], 'products', product);
    }
  }
  for (const [index, program] of eachOf(part?.programs)) {
    several(one, ['programs', index, 'recipes'], 'recipes', program.recipes);
    several(one, ['programs', index, 'benches'], 'benches', program.benches);
    for (const [line, { application }] of eachOf(program.changes)) {
      one(['programs', index, 'changes', line, 'application'], 'applications', application);
    }
  }
}

function recordReferences(part: Part, one: Ref): void {
  for (const [index, application] of eachOf(part?.applications)) {
    for (const [line, { product }] of eachOf(application.products)) {
      one(['applications', index, 'products', line, 'product'], 'products', product);
    }
    one(['applications', index, 'acid', 'product'], 'products', application.acid?.product);
    one(['applications', index, 'recipe'], 'recipes', application.recipe);
    several(one, ['applications', index, 'benches'], 'benches', application.benches);
  }
  for (const [index, spraying] of eachOf(part?.underWay)) {
    one(['underWay', index, 'recipe'], 'recipes', spraying.recipe);
    several(one, ['underWay', index, 'benches'], 'benches', spraying.benches);
  }
}

type Listed = readonly (string | null | undefined)[] | null | undefined;

function several(one: Ref, path: Path, collection: Collection, list: Listed): void {
  for (const [index, id] of eachOf(list)) one([...path, index], collection, id);
}
