import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { offerScreen } from '@/lib/views/offer';
import { fieldsOfOffer } from '@/shared/forms/offer';
import { EmptyPlace } from '../../../../_parts/empty-place';
import { OfferForm } from '../offer-form';

type OfferParams = { params: Promise<{ product: string }> };

export const metadata: Metadata = { title: 'A new offer' };

async function NewOfferPage({ params }: OfferParams) {
  const screen = await offerScreen(clock, decodeURIComponent((await params).product), null);
  if (!screen) notFound();
  const { product, shopId, taken, suppliers } = screen;
  return (
    <>
      <p>
        <a href={`/shelf/${encodeURIComponent(product.id)}`}>{product.name}</a>
      </p>
      <h1>A new offer</h1>
      <p className="soft">Who sells {product.name}, in which pack and at what price.</p>
      {suppliers.length === 0 ? (
        <EmptyPlace step={{ href: '/shelf/suppliers/new', text: 'Add a supplier' }}>
          Nobody sells to this shop yet. Add who sells it first, then what they offer.
        </EmptyPlace>
      ) : (
        <OfferForm
          {...{ shop: shopId, id: null, expecting: '', taken, suppliers, holds: null, form: product.form }}
          currency={screen.ways.currency}
          fields={fieldsOfOffer(null, product.id)}
        />
      )}
    </>
  );
}

export default doorPage('grow', NewOfferPage);
