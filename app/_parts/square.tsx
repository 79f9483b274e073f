import type { SquareCode } from '@/lib/views/square-code';

/** Four modules of quiet stand around a square code, or no reader finds it. */
const QUIET = 4;

/** A square code, with its quiet edge, as dark as paper can show it. */
export function Square({ of: { side, path } }: { of: SquareCode }) {
  const whole = side + 2 * QUIET;
  return (
    <svg viewBox={`${-QUIET} ${-QUIET} ${whole} ${whole}`} shapeRendering="crispEdges" aria-hidden="true">
      <rect x={-QUIET} y={-QUIET} width={whole} height={whole} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  );
}
