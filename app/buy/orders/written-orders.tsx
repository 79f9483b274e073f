'use client';

import { useEffect, useState } from 'react';
import { listedTogether, type WrittenOrder, writtenWords } from '@/shared/forms/written-order';
import { type Day, readDay } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import { dropOrder, keepOrder, keptOrders } from './kept-orders';
import styles from './orders.module.css';

type Listed = { written: WrittenOrder; isThrownAway: boolean };

/** The orders that were written on this device and not sent: to go on with, or to throw away. */
export function WrittenOrders({ shop, today }: { shop: string; today: Day }) {
  const [listed, setListed] = useState<Listed[]>([]);
  useEffect(() => {
    const look = () => setListed(keptOrders(shop).map((written) => ({ written, isThrownAway: false })));
    look();
    // Whoever goes back to this page finds it as it was left, and may have sent an order meanwhile.
    window.addEventListener('pageshow', look);
    return () => window.removeEventListener('pageshow', look);
  }, [shop]);
  if (listed.length === 0) return null;
  const turn = (one: Listed) => {
    if (one.isThrownAway) keepOrder(one.written);
    else dropOrder(one.written);
    setListed(listed.map((other) => (other === one ? { ...one, isThrownAway: !one.isThrownAway } : other)));
  };
  const together = listedTogether(listed.filter(({ isThrownAway }) => !isThrownAway).map(({ written }) => written));
  return (
    <section aria-labelledby="written">
      <h2 id="written">Written and not sent, on this device</h2>
      <ul className={styles.orders}>
        {listed.map((one) => (
          <WrittenLine key={one.written.address} one={one} today={today} turn={() => turn(one)} />
        ))}
      </ul>
      {together.length > 0 && (
        <p className="apart">
          <a href={`/buy/orders/list?${new URLSearchParams(together)}`}>Their purchase list, by supplier</a>
        </p>
      )}
    </section>
  );
}

function WrittenLine({ one: { written, isThrownAway }, today, turn }: { one: Listed; today: Day; turn: () => void }) {
  const { address, supplier, standing, writtenOn } = written;
  const day = readDay(writtenOn);
  return (
    <li>
      <p className={styles.who}>
        {isThrownAway ? (
          <span>{supplier.name}: thrown away</span>
        ) : (
          <a href={address}>
            {supplier.name}, {standing === '' ? 'a new order' : 'an order being changed'}
          </a>
        )}
        <button type="button" onClick={turn}>
          {isThrownAway ? 'Take it back' : 'Throw it away'}
        </button>
      </p>
      {!isThrownAway && (
        <p className="soft">
          {writtenWords(written)}
          {day.ok && ` · written ${showDay(day.value, today)}`}
        </p>
      )}
    </li>
  );
}
