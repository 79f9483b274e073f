import type { ShopFile } from '@/shared/shop-file/contract';
import { canonical } from './canonical';
import { differences, type Json } from './differences';

type FileOffer = ShopFile['offers'][number];
type FileProgram = ShopFile['programs'][number];
type FileApplication = ShopFile['applications'][number];

/**
 * A file that comes in, in its plain form, with the history that it says nothing of left as the shop has it: what an
 * offer cost before and since when, what became of single sprayings, and what else is on record of one. All of that is
 * what happened, and a file made by hand need not tell it.
 *
 * Takes    the shop as it stands in its plain form (null: it is to be a new shop), and the file, both past parsing
 */
export function withKnownHistory(current: ShopFile | null, incoming: ShopFile): ShopFile {
  const plain = canonical(incoming);
  if (!current) return plain;
  const offers = byId(current.offers);
  const programs = byId(current.programs);
  const records = byId(current.applications);
  return {
    ...plain,
    offers: plain.offers.map((offer) => withPrices(offers.get(offer.id), offer)),
    programs: plain.programs.map((program) => withChanges(programs.get(program.id), program)),
    applications: plain.applications.map((application, place) =>
      withDetails(records.get(application.id), application, incoming.applications[place]),
    ),
  };
}

function withPrices(was: FileOffer | undefined, offer: FileOffer): FileOffer {
  if (!was) return offer;
  const isSame = differences([was.price, was.breaks], [offer.price, offer.breaks]).length === 0;
  const earlier = isSame ? was.earlier : [...was.earlier, { since: was.since, price: was.price, breaks: was.breaks }];
  return {
    ...offer,
    since: offer.since ?? (isSame ? was.since : null),
    earlier: offer.earlier.length > 0 ? offer.earlier : earlier,
  };
}

function withChanges(was: FileProgram | undefined, program: FileProgram): FileProgram {
  const told = new Set(program.changes.map(({ on }) => on));
  const left = (was?.changes ?? []).filter(({ on }) => !told.has(on));
  return { ...program, changes: [...program.changes, ...left].sort((a, b) => (a.on < b.on ? -1 : 1)) };
}

/** What a file leaves out of a record stands there as it was. */
function withDetails(
  was: FileApplication | undefined,
  application: FileApplication,
  asWritten: FileApplication | undefined,
): FileApplication {
  if (!was) return application;
  const said = Object.entries(asWritten ?? application).filter(([, value]) => !isNothing(value));
  const fields = new Set(said.map(([field]) => field));
  const kept = Object.fromEntries(Object.entries(was).filter(([field]) => !fields.has(field)));
  return { ...application, ...kept };
}

const isNothing = (value: Json): boolean => value === null || (Array.isArray(value) && value.length === 0);

const byId = <T extends { id: string }>(items: readonly T[]): Map<string, T> =>
  new Map(items.map((item) => [item.id, item]));
