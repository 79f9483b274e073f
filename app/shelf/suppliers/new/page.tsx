import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { supplierScreen } from '@/lib/views/suppliers';
import { fieldsOfSupplier } from '@/shared/forms/supplier';
import { FirstVisit } from '../../../_parts/first-visit';
import { SupplierForm } from '../supplier-form';

export const metadata: Metadata = { title: 'A new supplier' };

async function NewSupplierPage() {
  const screen = await supplierScreen(clock, null);
  if (!screen) return <FirstVisit />;
  return (
    <>
      <p>
        <a href="/shelf/suppliers">Suppliers</a>
      </p>
      <h1>A new supplier</h1>
      <SupplierForm
        {...{ shop: screen.shopId, id: null, expecting: '', taken: screen.taken, currency: screen.ways.currency }}
        fields={fieldsOfSupplier(null)}
      />
    </>
  );
}

export default doorPage('grow', NewSupplierPage);
