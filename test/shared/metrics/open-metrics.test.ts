import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Figure, openMetricsText } from '@/shared/metrics/open-metrics';

/**
 * The lines that the format allows here.
 * Source  OpenMetrics 1.0, section "Text format" (memory)
 */
const LABEL = String.raw`[a-zA-Z_][a-zA-Z0-9_]*="(?:[^"\\\n]|\\["\\n])*"`;
const NAME = '[a-zA-Z_:][a-zA-Z0-9_:]*';
const LINE = new RegExp(
  `^(# TYPE ${NAME} (gauge|counter|histogram)|# UNIT ${NAME} [a-z]+|# HELP ${NAME} [^\\n]*|${NAME}(\\{${LABEL}(,${LABEL})*\\})? [-+0-9.eInf]+)$`,
);

/** The lines of a text, each of which must be one of the format, between nothing and the end mark. */
function linesOf(text: string): string[] {
  expect(text.endsWith('# EOF\n')).toBe(true);
  const lines = text.slice(0, -'# EOF\n'.length).split('\n').filter(Boolean);
  for (const line of lines) expect(line).toMatch(LINE);
  return lines;
}

test('whatever stands in labels and helps, every line is one of the format', () => {
  fc.assert(
    fc.property(
      fc.string(),
      fc.string(),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      (help, value, figure) => {
        const figures: Figure[] = [
          { name: 'answers', help, type: 'counter', values: [{ labels: { place: value }, value: figure }] },
        ];
        expect(linesOf(openMetricsText(figures, []))).toHaveLength(3);
      },
    ),
  );
});

test('counters end in _total, units stand at the end of names, and what is not known is left out', () => {
  const text = openMetricsText(
    [
      { name: 'answers', help: 'Answers.', type: 'counter', values: [{ labels: { status: '2xx' }, value: 3 }] },
      { name: 'held_bytes', help: 'Held.', type: 'gauge', unit: 'bytes', values: [{ value: 12 }] },
      { name: 'age_seconds', help: 'Age.', type: 'gauge', unit: 'seconds', values: [{ value: null }] },
    ],
    [],
  );
  expect(linesOf(text)).toEqual([
    ...['# TYPE answers counter', '# HELP answers Answers.', 'answers_total{status="2xx"} 3'],
    ...['# TYPE held_bytes gauge', '# UNIT held_bytes bytes', '# HELP held_bytes Held.', 'held_bytes 12'],
  ]);
});

test('a histogram counts up to its limits and ends with all', () => {
  const upTo = [
    { seconds: 0.5, count: 1 },
    { seconds: 1, count: 3 },
  ];
  const text = openMetricsText([], [{ name: 'took_seconds', help: 'How long.', upTo, count: 4, sum: 6.5 }]);
  expect(linesOf(text).slice(3)).toEqual([
    ...['took_seconds_bucket{le="0.5"} 1', 'took_seconds_bucket{le="1.0"} 3', 'took_seconds_bucket{le="+Inf"} 4'],
    ...['took_seconds_count 4', 'took_seconds_sum 6.5'],
  ]);
});
