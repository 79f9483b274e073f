import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { productFormScreen } from '@/lib/views/product-form';
import { FirstVisit } from '../../_parts/first-visit';
import { one, type Search } from '../../_parts/search';
import { ProductForm } from '../product-form/product-form';

export const metadata: Metadata = { title: 'A new product' };

/** A bar code that nobody knew leads here with its number, which is then the new product's. */
async function NewProductPage({ searchParams }: { searchParams: Promise<Search> }) {
  const gtin = one((await searchParams).gtin);
  const screen = await productFormScreen(clock, null);
  if (!screen) return <FirstVisit />;
  return (
    <>
      <p>
        <a href="/shelf">Shelf</a>
      </p>
      <h1>A new product</h1>
      <p className="soft">
        Name, kind and form are enough to begin. What is not known may stay so, and is shown as that.
      </p>
      <div className="apart">
        <ProductForm {...screen} fields={gtin ? { gtins: gtin } : {}} />
      </div>
    </>
  );
}

export default doorPage('grow', NewProductPage);
