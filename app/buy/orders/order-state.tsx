import type { OrderState } from '@/lib/views/orders';

/** Where an order stands, in words and with a mark for what is late. */
export function StateWords({ state }: { state: OrderState }) {
  switch (state.kind) {
    case 'late':
      return (
        <b className="grave">
          ▲ {state.days} {state.days === 1 ? 'day' : 'days'} late, {packs(state.rest)} still to come
        </b>
      );
    case 'expected':
      return <span>{state.someCame ? `partly here, ${packs(state.rest)} still to come` : 'on its way'}</span>;
    case 'closed':
      return (
        <span className="soft">{state.missing === 0 ? 'all here' : `closed, ${packs(state.missing)} never came`}</span>
      );
  }
}

const packs = (count: number): string => `${count} ${count === 1 ? 'pack' : 'packs'}`;
