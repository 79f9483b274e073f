/*
 * Figures of a running program as OpenMetrics 1.0 writes them, which is what programs that watch servers read.
 */

/** The media type of the text, without its character set. */
export const OPEN_METRICS = 'application/openmetrics-text; version=1.0.0';

/** Words that tell figures of one name apart, such as `{ status: '2xx' }`. */
type Labels = Readonly<Record<string, string>>;

/** A figure that goes up and down, or a count that only grows. Null: not known, and then it is left out. */
export type Figure = {
  name: string;
  help: string;
  type: 'gauge' | 'counter';
  unit?: 'bytes' | 'seconds';
  values: readonly { labels?: Labels; value: number | null }[];
};

/** How long something took: how often at most so many seconds, in all, and how many seconds together. */
export type Durations = {
  name: string;
  help: string;
  upTo: readonly { seconds: number; count: number }[];
  count: number;
  sum: number;
};

/** The text of all figures. Names must be letters and underscores; a unit stands at the end of its name. */
export function openMetricsText(figures: readonly Figure[], durations: readonly Durations[]): string {
  return [...figures.flatMap(figureLines), ...durations.flatMap(durationLines), '# EOF', ''].join('\n');
}

function figureLines({ name, help, type, unit, values }: Figure): string[] {
  const known = values.filter((one): one is { labels?: Labels; value: number } => one.value !== null);
  if (known.length === 0) return [];
  const sample = type === 'counter' ? `${name}_total` : name;
  return [
    ...[`# TYPE ${name} ${type}`, ...(unit ? [`# UNIT ${name} ${unit}`] : []), `# HELP ${name} ${escaped(help)}`],
    ...known.map(({ labels, value }) => `${sample}${labelText(labels)} ${value}`),
  ];
}

function durationLines({ name, help, upTo, count, sum }: Durations): string[] {
  return [
    ...[`# TYPE ${name} histogram`, `# UNIT ${name} seconds`, `# HELP ${name} ${escaped(help)}`],
    ...upTo.map(({ seconds, count: within }) => `${name}_bucket{le="${decimal(seconds)}"} ${within}`),
    ...[`${name}_bucket{le="+Inf"} ${count}`, `${name}_count ${count}`, `${name}_sum ${sum}`],
  ];
}

/** A limit is a decimal number in its text: "1.0", not "1". */
const decimal = (seconds: number): string => (Number.isInteger(seconds) ? `${seconds}.0` : `${seconds}`);

function labelText(labels: Labels | undefined): string {
  const parts = Object.entries(labels ?? {}).map(([name, value]) => `${name}="${escaped(value)}"`);
  return parts.length > 0 ? `{${parts.join(',')}}` : '';
}

const escaped = (text: string): string => text.replaceAll('\\', '\\\\').replaceAll('"', '\\"').replaceAll('\n', '\\n');
