'use client';

import type { RecipeCheck } from '@/lib/engine/mix/recipe-check';
import parts from '../../_parts/thing-form.module.css';
import styles from './recipe-form.module.css';

type RecipeOrderProps = {
  order: RecipeCheck['order'];
  /** Whether the order is that of an earlier moment, so that moving must wait. */
  isBehind: boolean;
  onMove: (place: number, by: -1 | 1) => void;
  onUsual: (number: number) => void;
};

/** The order in which the lines go in, each with its reason, and how to give one a place of its own. */
export function RecipeOrder({ order, isBehind, onMove, onUsual }: RecipeOrderProps) {
  return (
    <section aria-labelledby="order">
      <h2 id="order" className={styles.heading}>
        Order of addition
      </h2>
      {order.length === 0 && <p className="soft">Water first. The rest follows once there are products.</p>}
      <ol className={order.length > 0 ? parts.rows : undefined}>
        {order.map(({ line, name, overriddenBy, why }, place) => (
          <li key={line} className={styles.turn}>
            <span className={styles.place}>{place + 1}</span>
            <div>
              <b>{name}</b>
              <p className="soft small">{why}</p>
              {overriddenBy === 'recipe' && (
                <button type="button" className={styles.out} onClick={() => onUsual(line)}>
                  Usual place
                </button>
              )}
            </div>
            <span className={styles.moves}>
              <button
                type="button"
                disabled={place === 0 || isBehind}
                onClick={() => onMove(place, -1)}
                aria-label={`Move ${name} up`}
              >
                ↑
              </button>
              <button
                type="button"
                disabled={place === order.length - 1 || isBehind}
                onClick={() => onMove(place, 1)}
                aria-label={`Move ${name} down`}
              >
                ↓
              </button>
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}
