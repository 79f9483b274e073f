'use client';

import { type RefObject, useEffect, useState } from 'react';
import { type OrderTyped, orderTyped } from '@/shared/forms/order';
import type { Fields } from '@/shared/forms/rows';
import { type OrderRow, type WrittenOrder, writtenAgain, writtenIn } from '@/shared/forms/written-order';
import { dropOrder, keepOrder, keptOrder, thisPage } from './kept-orders';

/** The form of an order: its rows, and what its fields begin with. */
type Begun = Pick<WrittenOrder, 'shop' | 'supplier' | 'standing'> & { today: string; rows: OrderRow[]; first: Fields };

/** What was written before: put back into the form, or thrown away as long as the page is open. */
export type Found = { written: WrittenOrder; isBack: boolean; gone: string[] };

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

/** Keeps an order on this device while it is written, puts it back into its form, and drops it once it is sent. */
export function useWritten(form: RefObject<HTMLFormElement | null>, begun: Begun, sent: object | false): Written {
  const { shop, rows, first } = begun;
  const [fields, setFields] = useState(first);
  const [found, setFound] = useState<Found | null>(null);
  const { typed, faults } = orderTyped(fields);
  const standing = (found?.isBack && found.written.standing) || begun.standing;
  const fill = (into: Fields): void => {
    for (const [name, value] of Object.entries(into)) {
      const field = form.current?.elements.namedItem(name);
      if (field instanceof HTMLInputElement) field.value = value;
    }
    setFields(fieldsIn(form.current));
  };
  const putBack = (written: WrittenOrder): void => {
    const { fields: again, gone } = writtenAgain(written, rows);
    fill(again);
    setFound({ written, isBack: true, gone });
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked for once, when the page is alive.
  useEffect(() => {
    const kept = keptOrder({ shop, address: thisPage() });
    if (kept) putBack(kept);
    else setFields(fieldsIn(form.current));
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: once it is sent, nothing of it is to be found again.
  useEffect(() => {
    if (!sent) return;
    dropOrder({ shop, address: thisPage() });
    setFound(null);
  }, [sent]);
  const look = () => {
    const now = fieldsIn(form.current);
    setFields(now);
    const at = { shop, address: thisPage() };
    const own = writtenIn(rows, first, now);
    const { supplier, today: writtenOn } = begun;
    if (own) keepOrder({ ...at, supplier, standing, writtenOn, ...own });
    else dropOrder(at);
    // What was thrown away could only be taken back over what is typed now.
    if (found && !found.isBack) setFound(null);
  };
  return {
    ...{ typed, isReadable: faults.length === 0, standing, found, look },
    throwAway: () => {
      if (!found) return;
      const blank = rows.flatMap((_, row) => [`lines[${row}].count`, `lines[${row}].price`]);
      fill({ ...Object.fromEntries(blank.map((name) => [name, ''])), ...first });
      dropOrder({ shop, address: thisPage() });
      setFound({ ...found, isBack: false });
    },
    takeBack: () => {
      if (!found) return;
      keepOrder(found.written);
      putBack(found.written);
    },
  };
}

const fieldsIn = (form: HTMLFormElement | null): Fields =>
  form ? Object.fromEntries([...new FormData(form)].map(([name, value]) => [name, String(value)])) : {};
