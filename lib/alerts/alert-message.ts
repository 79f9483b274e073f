import 'server-only';
import type { Alert } from '@/lib/engine/alerts/alert';
import type { Severity } from '@/lib/engine/rules/flag';
import type { Instant } from '@/shared/time/instant';
import { showInstant } from '@/shared/time/show-day';
import { dayOf, type Zone } from '@/shared/time/zone';
import { fingerprint } from '../data/fingerprint';

/** What is handed over in one go. The same alerts make the same id, so that a repeat can be told from a new message. */
export type AlertMessage = { id: string; shop: string; zone: Zone; madeAt: Instant; alerts: Alert[]; isTest: boolean };

export const messageOf = (shop: { name: string; zone: Zone }, madeAt: Instant, alerts: Alert[]): AlertMessage => ({
  id: fingerprint([shop.name, ...alerts.map(({ key }) => key)]).slice(0, 32),
  ...{ shop: shop.name, zone: shop.zone, madeAt, alerts, isTest: false },
});

/** A message that tells of nothing, to see whether any arrives. */
export const testMessage = (shop: { name: string; zone: Zone }, madeAt: Instant): AlertMessage => ({
  ...messageOf(shop, madeAt, []),
  id: fingerprint([shop.name, 'test', madeAt]).slice(0, 32),
  isTest: true,
});

/** The subject of an e-mail. The name of the shop is one line whatever is in it. */
export function subjectOf({ shop, alerts, isTest }: AlertMessage): string {
  const name = shop.replace(/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]+/gu, ' ');
  if (isTest) return `${name}: a test`;
  return `${name}: ${alerts.length === 1 ? 'one alert' : `${alerts.length} alerts`}`;
}

const WORDS: Record<Severity, string> = { stop: 'STOP', warn: 'Look', note: 'Note' };

/** The text of an e-mail: one line for each alert, and what it rests on. */
export function textOf({ shop, zone, madeAt, alerts, isTest }: AlertMessage): string {
  const when = `As of ${showInstant(madeAt, zone, dayOf(zone, madeAt))}, clock of ${zone}.`;
  const lines = isTest
    ? ['This is a test. Alerts will come here.']
    : alerts.map(({ severity, sentence }) => `${WORDS[severity]}: ${sentence}`);
  return [shop, '', ...lines, '', when, 'The keep-out board decides, and the label governs.', ''].join('\n');
}

/** What a webhook is sent, as JSON. */
export const documentOf = ({ id, shop, zone, madeAt, alerts, isTest }: AlertMessage) => ({
  ...{ format: 'bench-and-bottle/alerts@1', id, shop, zone, test: isTest },
  madeAt: new Date(madeAt).toISOString(),
  alerts: alerts.map(({ key, kind, severity, sentence }) => ({ key, kind, severity, sentence })),
});
