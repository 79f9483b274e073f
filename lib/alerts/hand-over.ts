import 'server-only';
import type { AlertSettings, AlertWay } from '@/shared/alerts/alert-settings';
import type { Reading } from '@/shared/outcome';
import { unreadable } from '@/shared/outcome';
import type { AlertMessage } from './alert-message';
import { sendMail } from './send-mail';
import { sendWebhook } from './send-webhook';

/** Hand a message over in one way. Gives what happened, in a sentence; nothing that goes wrong outside is thrown. */
export async function handOver(
  way: AlertWay,
  settings: AlertSettings,
  message: AlertMessage,
): Promise<Reading<string>> {
  const { mail, webhook } = settings;
  if (way === 'mail' && mail) return sendMail(mail, message);
  if (way === 'webhook' && webhook) return sendWebhook(webhook, message);
  return unreadable('Nothing is set up for this.');
}
