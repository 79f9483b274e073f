'use client';

import { useState } from 'react';
import type { FormState } from '@/shared/forms/form-state';
import { typedIn } from '../_parts/form-field';
import styles from './goods-form.module.css';

/** Asks whether something that is there already is meant twice. Nothing is asked until the shop has said so. */
export function KeepBoth({ state, label }: { state: FormState; label: string }) {
  const fault = state.status === 'invalid' ? state.fields.keepBoth : undefined;
  const [isMeant, setMeant] = useState(typedIn(state, 'keepBoth') === 'yes');
  return (
    <>
      <input type="hidden" name="keepBoth" value={isMeant ? 'yes' : ''} />
      {(fault || isMeant) && (
        <div>
          <p id="keep-both-fault" className={styles.fault}>
            {fault}
          </p>
          <label className="tick">
            <input
              type="checkbox"
              checked={isMeant}
              onChange={(event) => setMeant(event.target.checked)}
              aria-describedby="keep-both-fault"
            />
            {label}
          </label>
        </div>
      )}
    </>
  );
}
