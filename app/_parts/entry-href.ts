import type { EntryPlace } from '@/lib/engine/rules/to-enter';

/** The page, and on it the field, where something that is not known is entered. */
export function entryHref(at: EntryPlace): string {
  switch (at.of) {
    case 'product':
      return productHref(at);
    case 'bench':
      return `/setup/benches/${part(at.id)}#${part(at.field === 'area' ? 'area' : `plants[${at.group}].mlPerPlant`)}`;
    case 'container':
      return `/shelf/bottle/${part(at.lot)}/${at.place}#paid`;
    case 'bottle':
      return `/shelf/bottle/${part(at.lotId)}/no-${at.place + 1}#paid`;
    case 'offers':
      return `/shelf/${part(at.product)}/offer/new`;
    case 'offer':
      return `/shelf/${part(at.product)}/offer/${part(at.id)}#leadDays`;
    case 'supplier':
      return `/shelf/suppliers/${part(at.id)}#${at.field}`;
    case 'order':
      return `/buy/orders/${part(at.id)}/edit`;
    case 'record':
      return `/log/${part(at.id)}/amend`;
    case 'shop':
      return `/setup/shop#${at.field}`;
  }
}

const part = encodeURIComponent;

function productHref({ id, field }: Extract<EntryPlace, { of: 'product' }>): string {
  if (field === 'gramsPerTeaspoon') return `/shelf/${part(id)}/weigh`;
  return `/shelf/${part(id)}/edit#${part(field === 'contents' ? 'contents[0].substance' : field)}`;
}
