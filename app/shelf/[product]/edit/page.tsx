import { UnreadOf, UnreadOrMissing } from '@/app/_parts/unread-of';
import { clock } from '@/lib/clock';
import { doorPage, doorTitle } from '@/lib/door/door-page';
import { productFormScreen } from '@/lib/views/product-form';
import { ProductForm } from '../../product-form/product-form';

type ProductParams = { params: Promise<{ product: string }> };

export const generateMetadata = doorTitle('grow', async ({ params }: ProductParams) => {
  const screen = await productFormScreen(clock, decodeURIComponent((await params).product));
  return screen && `Correct ${screen.name}`;
});

async function EditProductPage({ params }: ProductParams) {
  const { product } = await params;
  const screen = await productFormScreen(clock, decodeURIComponent(product));
  const of = { list: 'products' as const, id: decodeURIComponent(product) };
  if (!screen) return <UnreadOrMissing of={of} />;
  return (
    <>
      <UnreadOf of={of} />
      <p>
        <a href="/shelf">Shelf</a> / <a href={`/shelf/${product}`}>{screen.name}</a>
      </p>
      <h1>Correct {screen.name}</h1>
      <p className="soft">What the books hold already stays as it was: what was received, drawn and sprayed.</p>
      <div className="apart">
        <ProductForm {...screen} />
      </div>
    </>
  );
}

export default doorPage('grow', EditProductPage);
