import type { Severity } from '../rules/flag';

const ALERT_KINDS = ['reorder', 'bottle', 'reopening', 'closed-at-opening', 'label-limit'] as const;
export type AlertKind = (typeof ALERT_KINDS)[number];

/** Something that somebody should be told once. */
export type Alert = {
  /** What it is about: the same as long as it is the same matter, and another for the next one of its kind. */
  key: string;
  kind: AlertKind;
  severity: Severity;
  /** Whole sentences that can be read on any day: times have their date. */
  sentence: string;
};

/** A key of its parts, of which none can pass for two. */
export const keyOf = (kind: AlertKind, ...parts: (string | number)[]): string =>
  [kind, ...parts.map((part) => encodeURIComponent(part))].join('/');
