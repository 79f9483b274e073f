/** How the words along the axes of a chart look. */
export const TICK = { fill: 'var(--soft)', fontSize: 13 };

/** How the slip looks that says what stands under the pointer. */
export const SLIP = {
  background: 'var(--sheet)',
  border: '1px solid var(--edge)',
  borderRadius: 3,
  color: 'var(--ink)',
};
