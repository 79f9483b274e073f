import 'server-only';
import { database } from './database';

/** How large a shop is, as far as it decides how long working it out takes. */
export type ShopSize = {
  products: number;
  benches: number;
  records: number;
  /** How many sprayings its programs come to in a week, at most. */
  weekly: number;
};

/** A shop that is read, checked and planned in a twentieth of a second. */
export const isSmall = ({ products, benches, records }: ShopSize): boolean =>
  products <= 100 && benches <= 100 && records <= 300;

/** Counted by the database, without reading the shop. */
export async function shopSize(shopId: string): Promise<ShopSize> {
  const { reader } = await database();
  const where = { shopId };
  const [products, benches, records, programs] = [
    await reader.product.count({ where }),
    await reader.bench.count({ where }),
    await reader.application.count({ where }),
    await reader.program.findMany({ where, select: { repeat: true } }),
  ];
  const weekly = programs.reduce((sum, { repeat }) => sum + timesInAWeek(repeat), 0);
  return { products, benches, records, weekly };
}

/** A rule that names no days of the week comes round on each of them at most. */
function timesInAWeek(repeat: string | null): number {
  if (repeat === null) return 1;
  const days = /BYDAY=([^;]*)/i.exec(repeat)?.[1]?.split(',').length;
  return days ?? (/FREQ=DAILY/i.test(repeat) ? 7 : 1);
}
