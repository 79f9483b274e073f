import type { OfferToOrder, OrderFormScreen } from '@/lib/views/orders';
import { fieldsOfOrder, orderTyped } from '@/shared/forms/order';
import type { Fields } from '@/shared/forms/rows';

/** A row of the form, and the how-manieth of its offer it is. */
export type OfferRow = { offer: OfferToOrder; which: number };

const fromOf = ({ order }: OrderFormScreen, asked: Fields): Fields => (order ? fieldsOfOrder(order.file) : asked);

/** One row for each offer, and one more for each further line that the order has of it. */
export function rowsOf(screen: OrderFormScreen, asked: Fields): OfferRow[] {
  const { lines } = orderTyped(fromOf(screen, asked)).typed;
  return screen.offers.flatMap((offer) => {
    const its = lines.filter((line) => line.offer === offer.id).length;
    return Array.from({ length: Math.max(its, 1) }, (_, which) => ({ offer, which }));
  });
}

/** What the fields begin with: the order as it stands, or what the address says, each line at a row of its offer. */
export function firstOf(screen: OrderFormScreen, asked: Fields, rows: readonly OfferRow[]): Fields {
  const from = fromOf(screen, asked);
  const { lines } = orderTyped(from).typed;
  const fields = rows.flatMap(({ offer: { id }, which }, row) => {
    const line = lines.filter((one) => one.offer === id)[which];
    if (!line) return [];
    return [
      [`lines[${row}].offer`, id],
      [`lines[${row}].count`, String(line.count)],
      [`lines[${row}].price`, from[`lines[${line.row}].price`] ?? ''],
    ];
  });
  const { placedOn = '', expectedOn = '', freight = '', note = '' } = from;
  // A plan names the day on which it would order; whoever writes that order before then orders it today.
  const ordered = placedOn === '' || placedOn > screen.today ? screen.today : placedOn;
  return { placedOn: ordered, expectedOn, freight, note, ...Object.fromEntries(fields) };
}
