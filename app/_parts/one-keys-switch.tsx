'use client';

import { useEffect, useState } from 'react';
import styles from './find-dialog.module.css';
import { oneKeysAreOn, turnOneKeys } from './one-keys';

/** Whether single keys do something in this browser. Shown once scripts run, since nothing else listens to keys. */
export function OneKeysSwitch() {
  const [on, setOn] = useState<boolean | null>(null);
  useEffect(() => setOn(oneKeysAreOn()), []);
  if (on === null) return null;
  return (
    <label className={styles.keys}>
      <input
        type="checkbox"
        checked={on}
        onChange={({ target }) => {
          turnOneKeys(target.checked);
          setOn(target.checked);
        }}
      />
      <span>
        Single keys: <kbd>/</kbd> searches, <kbd>T</kbd> turns the shelf into a table
      </span>
    </label>
  );
}
