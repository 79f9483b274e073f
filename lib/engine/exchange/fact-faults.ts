import type { Fault } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { grouped } from '../grouped';
import { differences } from './differences';
import { packOf } from './pack-of';
import { parentOf } from './split-lots';

type FileLot = ShopFile['lots'][number];
type FileProduct = ShopFile['products'][number];
type ById<T> = Map<string, T>;

/**
 * Where a file would rewrite what the books hold as facts: what was received, in which packs and for how much, and what
 * was sprayed.
 *
 * Takes    the shop as it stands and the file that comes in, both in their plain form
 */
export function factFaults(current: ShopFile, incoming: ShopFile): Fault[] {
  const lots = byId(current.lots);
  return [
    ...productFaults(current, incoming),
    ...incoming.lots.flatMap((lot, place) => lotFaults(lots, lot, `lots[${place}]`)),
    ...splitFaults(current.lots, incoming.lots),
    ...applicationFaults(current, incoming),
  ];
}

/** A product may be corrected, as long as its containers keep the amounts that the books have for them. */
function productFaults(current: ShopFile, incoming: ShopFile): Fault[] {
  const before = byId(current.products);
  const lots = grouped(current.lots, ({ product }) => product);
  return incoming.products.flatMap((product, place) => {
    const was = before.get(product.id);
    if (!was) return [];
    if (was.form !== product.form) {
      return fault(
        `products[${place}].form`,
        `"${product.id}" is a ${was.form} in the shop. Give another form another id.`,
      );
    }
    const lot = lots.get(product.id)?.find(({ pack }) => !holdsSame(pack, was, product));
    if (!lot) return [];
    const field = was.densityGPerMl === product.densityGPerMl ? 'gramsPerTeaspoon' : 'densityGPerMl';
    return fault(
      `products[${place}].${field}`,
      `With this, lot "${lot.id}" (${lot.pack}) would hold another amount than was received. ` +
        `Leave it as it is in the shop (${was[field] ?? 'null'}), or enter the product anew under another id.`,
    );
  });
}

const holdsSame = (pack: string, was: FileProduct, is: FileProduct): boolean => packOf(pack, was) === packOf(pack, is);

/** What was received cannot change. What a lot cost may be filled in when nobody knew it. */
function lotFaults(lots: ById<FileLot>, lot: FileLot, path: string): Fault[] {
  const was = lots.get(lot.id);
  if (!was) return [];
  return LOT_FACTS.flatMap((field) => {
    const learned = field === 'paid' && was.paid === null;
    if (was[field] === lot[field] || learned) return [];
    return fault(
      `${path}.${field}`,
      `Lot "${lot.id}" is in the books with ${field} ${JSON.stringify(was[field])}; what was received is not rewritten. ` +
        'Write that, or give this lot another id if it is another one.',
    );
  });
}

const LOT_FACTS = ['product', 'pack', 'count', 'paid', 'receivedOn'] as const;

/** A lot that stands in the shop in parts, or a part of one that stands there whole, is not the same stock a second time. */
function splitFaults(current: FileLot[], incoming: FileLot[]): Fault[] {
  const here = new Set(current.map(({ id }) => id));
  const wholes = new Set(current.map(({ id }) => parentOf(id)));
  return incoming.flatMap(({ id }, place) => {
    if (here.has(id)) return [];
    const parent = parentOf(id);
    const isPart = parent !== null && (here.has(parent) || wholes.has(parent));
    if (!isPart && !wholes.has(id)) return [];
    return fault(
      `lots[${place}].id`,
      `The containers of lot "${parent ?? id}" have been used since this file was made, so the shop has them in other parts. ` +
        'Export the shop again and make the change there.',
    );
  });
}

/** What was sprayed is a record. It is corrected by an amendment that says who, when and why. */
function applicationFaults(current: ShopFile, incoming: ShopFile): Fault[] {
  const before = byId(current.applications);
  return incoming.applications.flatMap((application, place) => {
    const was = before.get(application.id);
    const [first] = was ? differences(was, application) : [];
    if (!first) return [];
    return fault(
      `applications[${place}].${first.field}`,
      `Application "${application.id}" is on record with ${JSON.stringify(first.from)} here. ` +
        'A record is amended in the log, with a reason, and not by a file. Write what the record says.',
    );
  });
}

const fault = (path: string, message: string): Fault[] => [{ path, message }];

const byId = <T extends { id: string }>(items: readonly T[]): ById<T> => new Map(items.map((item) => [item.id, item]));
