import { parsedOrThrow } from '../../data/any-shop-file';
import { SMALL } from '../small-shop';

/** The small shop with something for every command to write to: open benches, a weekly program, an order on its way. */
export const TARGET = parsedOrThrow({
  ...SMALL,
  suppliers: [...SMALL.suppliers, { id: 's2', name: 'Unused' }],
  products: [...SMALL.products, { id: 'u', name: 'Unused', kind: 'other', form: 'liquid' }],
  benches: [...SMALL.benches, { id: 'b2', name: 'Second bench' }],
  applications: SMALL.applications.map((one) => ({ ...one, endedAt: '2026-02-24T23:00:00Z' })),
  programs: SMALL.programs.map((one) => ({ ...one, startsOn: '2026-03-03', repeat: 'FREQ=WEEKLY;BYDAY=TU' })),
  orders: [{ id: 'q', supplier: 's', placedOn: '2026-03-20', lines: [{ offer: 'o', count: 9 }] }],
});
