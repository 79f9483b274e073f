import styles from './budget.module.css';

/** What the chart stacks, and how each looks. */
export const SERIES = [
  { key: 'actual-product', name: 'product, spent', fill: 'var(--leaf)', strokeWidth: 0 },
  { key: 'actual-waste', name: 'wasted', fill: 'var(--oxide)', strokeWidth: 0 },
  { key: 'actual-labour', name: 'work, done', fill: 'var(--edge)', strokeWidth: 0 },
  { key: 'foreseen-product', name: 'product, was planned', fill: 'url(#foreseen-product)', strokeWidth: 1 },
  { key: 'foreseen-labour', name: 'work, was planned', fill: 'url(#foreseen-labour)', strokeWidth: 1 },
  { key: 'planned-product', name: 'product, planned', fill: 'url(#planned-product)', strokeWidth: 1 },
  { key: 'planned-waste', name: 'will be wasted', fill: 'url(#planned-waste)', strokeWidth: 1 },
  { key: 'planned-labour', name: 'work, planned', fill: 'url(#planned-labour)', strokeWidth: 1 },
] as const;

/** Which look means what, in words beside the same look. */
export function BudgetLegend() {
  return (
    <ul className={styles.legend} aria-hidden="true">
      {SERIES.map(({ key, name, fill, strokeWidth }) => (
        <li key={key}>
          <svg width="18" height="14" aria-hidden="true" focusable="false">
            <title>{name}</title>
            <rect x="1" y="1" width="16" height="12" fill={fill} stroke="var(--ink)" strokeWidth={strokeWidth} />
          </svg>
          {name}
        </li>
      ))}
    </ul>
  );
}
