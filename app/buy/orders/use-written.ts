'use client';

import { type RefObject, useEffect, useState } from 'react';
import { type OrderTyped, orderTyped } from '@/shared/forms/order';
import type { Fields } from '@/shared/forms/rows';
import { type OrderRow, type WrittenOrder, writtenAgain, writtenIn } from '@/shared/forms/written-order';
import { dropOrder, keepOrder, keptOrder, thisPage } from './kept-orders';

/** The form of an order: its rows, and what its fields begin with. */
type Begun = Pick<WrittenOrder, 'shop' | 'supplier' | 'standing'> & { today: string; rows: OrderRow[]; first: Fields };

/** What was written before: put back into the form, or thrown away as long as the page is open. */
type Found = { written: WrittenOrder; isBack: boolean; gone: string[] };

export type Written = {
  /** What is typed just now, as far as it can be read, and whether all of it can. */
  typed: OrderTyped;
  isReadable: boolean;
  /** How the order stood when the writing began. */
  standing: string;
  found: Found | null;
  /** To be called at every stroke. */
  look: () => void;
  throwAway: () => void;
  takeBack: () => void;
};

/** Where an order to a supplier is written. */
export const newOrderHref = (supplier: string): string => `/buy/orders/new?${new URLSearchParams({ supplier })}`;

type FormRef = RefObject<HTMLFormElement | null>;

/** Keeps an order on this device while it is written, puts it back into its form, and drops it once it is sent. */
export function useWritten(form: FormRef, begun: Begun, sent: object | false): Written {
  const { shop, rows, first } = begun;
  const { fields, fill, read } = useFields(form, first);
  const [found, setFound] = useState<Found | null>(null);
  const { typed, faults } = orderTyped(fields);
  const standing = (found?.isBack && found.written.standing) || begun.standing;
  const putBack = (written: WrittenOrder): void => {
    const { fields: again, gone } = writtenAgain(written, rows);
    fill(again);
    setFound({ written, isBack: true, gone });
  };
  useOnceAlive(() => {
    const kept = keptOrder({ shop, address: thisPage() });
    if (kept) putBack(kept);
    else read();
  });
  useOnceSent(sent, () => {
    dropOrder({ shop, address: thisPage() });
    setFound(null);
    // A page that is read anew must not offer the lines of its address a second time.
    if (begun.standing === '') window.history.replaceState(null, '', newOrderHref(begun.supplier.id));
  });
  const look = () => {
    keep({ ...begun, standing }, read());
    // What was thrown away could only be taken back over what is typed now.
    if (found && !found.isBack) setFound(null);
  };
  const throwAway = () => {
    fill(begunAgain(begun));
    dropOrder({ shop, address: thisPage() });
    setFound(found && { ...found, isBack: false });
  };
  const takeBack = () => {
    if (!found) return;
    keepOrder(found.written);
    putBack(found.written);
  };
  return { typed, isReadable: faults.length === 0, standing, found, look, throwAway, takeBack };
}

/** Does something once the page is alive, and reads a page anew that the browser had put by: much may have happened since. */
function useOnceAlive(look: () => void): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: once.
  useEffect(() => {
    look();
    const anew = ({ persisted }: PageTransitionEvent) => persisted && window.location.reload();
    window.addEventListener('pageshow', anew);
    return () => window.removeEventListener('pageshow', anew);
  }, []);
}

function useOnceSent(sent: object | false, then: () => void): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each time it is sent.
  useEffect(() => {
    if (sent) then();
  }, [sent]);
}

/** The fields of a form as they stand: to be read, and to be written into. */
function useFields(form: FormRef, first: Fields) {
  const [fields, setFields] = useState(first);
  const read = (): Fields => {
    const now = form.current ? [...new FormData(form.current)].map(([name, value]) => [name, String(value)]) : [];
    const typed: Fields = Object.fromEntries(now);
    setFields(typed);
    return typed;
  };
  const fill = (into: Fields): void => {
    for (const [name, value] of Object.entries(into)) {
      const field = form.current?.elements.namedItem(name);
      if (field instanceof HTMLInputElement) field.value = value;
    }
    read();
  };
  return { fields, fill, read };
}

/** Keep what is typed as long as it is otherwise than the form began. */
function keep({ shop, supplier, standing, today: writtenOn, rows, first }: Begun, now: Fields): void {
  const at = { shop, address: thisPage() };
  const written = writtenIn(rows, first, now);
  if (written) keepOrder({ ...at, supplier, standing, writtenOn, ...written });
  else dropOrder(at);
}

/** Every field as the form began, blank where nothing stood. */
function begunAgain({ rows, first }: Begun): Fields {
  const blank = rows.flatMap((_, row) => [`lines[${row}].count`, `lines[${row}].price`]);
  return { ...Object.fromEntries(blank.map((name) => [name, ''])), ...first };
}
