'use client';

import type { Day } from '@/shared/time/day';
import { FormField, typedIn } from '../../../../_parts/form-field';
import { HiddenFields } from '../../../../_parts/hidden-fields';
import {
  correctBottleDayAction,
  moveBottleAction,
  openBottleAction,
  payBottleAction,
  shutBottleAction,
} from './actions';
import { type About, BottleForm } from './bottle-form';

type OpenFormProps = { about: About; openedOn: Day | null; receivedOn: Day; today: Day };

/** Notes that a bottle was opened. */
export function OpenForm({ about, openedOn, receivedOn, today }: OpenFormProps) {
  return (
    <BottleForm
      about={about}
      action={openBottleAction}
      name="open"
      title="Opened"
      button="Note as opened"
      isOver={openedOn !== null}
    >
      {(state) => (
        <FormField
          state={state}
          name="openedOn"
          label="Opened on"
          hint="Its life once opened is counted from this day. A draw opens a bottle by itself."
        >
          {(wiring) => (
            <input
              {...wiring}
              type="date"
              min={receivedOn}
              max={today}
              defaultValue={typedIn(state, 'openedOn', today)}
            />
          )}
        </FormField>
      )}
    </BottleForm>
  );
}

type ShutFormProps = { about: About; openedOn: Day | null; drawnFrom: boolean };

/** Notes that a bottle was not opened after all, as long as nothing was drawn from it. */
export function ShutForm({ about, openedOn, drawnFrom }: ShutFormProps) {
  return (
    <BottleForm
      about={about}
      action={shutBottleAction}
      name="shut"
      title="Not opened after all"
      button="Note as not opened"
      isOver={openedOn === null || drawnFrom}
    >
      {(state) => (
        <FormField state={state} name="reason" id="shut-reason" label="Why" hint="Such as: it was another bottle.">
          {(wiring) => <input {...wiring} defaultValue={typedIn(state, 'reason')} />}
        </FormField>
      )}
    </BottleForm>
  );
}

type MoveFormProps = { about: About; keptIn: string | null; places: string[] };

/** Notes that a bottle stands somewhere else. */
export function MoveForm({ about, keptIn, places }: MoveFormProps) {
  return (
    <BottleForm about={about} action={moveBottleAction} name="move" title="Moved" button="Note the place">
      {(state) => (
        <FormField
          state={state}
          name="keptIn"
          label="Where it stands now"
          hint={places.length > 0 ? `In use: ${places.join(', ')}.` : 'Such as: lower shelf, cabinet.'}
        >
          {(wiring) => (
            <>
              <input
                {...wiring}
                defaultValue={typedIn(state, 'keptIn', keptIn ?? '')}
                list="places-in-use"
                maxLength={100}
              />
              <datalist id="places-in-use">
                {places.map((place) => (
                  <option key={place} value={place} />
                ))}
              </datalist>
            </>
          )}
        </FormField>
      )}
    </BottleForm>
  );
}

/** Corrects the last day that is printed on a bottle. */
export function LastDayForm({ about, expiresOn }: { about: About; expiresOn: Day | null }) {
  return (
    <BottleForm
      about={about}
      action={correctBottleDayAction}
      name="dated"
      title="Printed last day is another"
      button="Correct the day"
    >
      {(state) => (
        <>
          <FormField
            state={state}
            name="expiresOn"
            label="Last day as printed"
            hint="Empty when none is printed. A month alone lasts to its last day."
          >
            {(wiring) => <input {...wiring} type="date" defaultValue={typedIn(state, 'expiresOn', expiresOn ?? '')} />}
          </FormField>
          <FormField state={state} name="reason" id="dated-reason" label="Why" hint="Such as: misread the label.">
            {(wiring) => <input {...wiring} defaultValue={typedIn(state, 'reason')} />}
          </FormField>
        </>
      )}
    </BottleForm>
  );
}

type PaidFormProps = { about: About; isPaid: boolean; count: number; currency: string };

/** Notes what was paid, where nobody entered it when the bottle came. */
export function PaidForm({ about, isPaid, count, currency }: PaidFormProps) {
  return (
    <BottleForm
      about={about}
      action={payBottleAction}
      name="paid"
      title="What was paid for it"
      button="Note the price"
      isOver={isPaid}
    >
      {(state) => (
        <>
          <HiddenFields of={{ currency }} />
          <FormField
            state={state}
            name="paid"
            label={count > 1 ? 'Paid for the whole lot' : 'Paid for it'}
            hint="Such as 24.00, without freight; 0 when it cost nothing. It stays as it is entered."
          >
            {(wiring) => <input {...wiring} defaultValue={typedIn(state, 'paid')} inputMode="decimal" />}
          </FormField>
        </>
      )}
    </BottleForm>
  );
}
