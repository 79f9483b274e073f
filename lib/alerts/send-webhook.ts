import 'server-only';
import { request as plainRequest } from 'node:http';
import { request as guardedRequest } from 'node:https';
import type { WebhookSettings } from '@/shared/alerts/alert-settings';
import { readWebhookUrl } from '@/shared/alerts/webhook-url';
import { type Reading, read, unreadable } from '@/shared/outcome';
import { type AlertMessage, documentOf } from './alert-message';
import { type Judged, judgedAddress, type LookUp } from './allowed-address';

/** So long the other program may take, ms. */
const PATIENCE = 15_000;

/**
 * Post a message to another program as JSON.
 *
 * Gives    what happened, in a sentence; any answer from 200 to 299 counts as taken
 * Refuses  an address that may not be connected to; any other answer, being sent elsewhere among them
 */
export async function sendWebhook(
  webhook: WebhookSettings,
  message: AlertMessage,
  lookUp?: LookUp,
): Promise<Reading<string>> {
  const url = readWebhookUrl(webhook.url, webhook.ownNetwork);
  if (!url.ok) return url;
  const judged = await judgedAddress(url.value.hostname.replace(/^\[|\]$/g, ''), webhook.ownNetwork, lookUp);
  if (!judged.ok) return judged;
  const answered = await post(url.value, judged.value, JSON.stringify(documentOf(message)), message.id);
  if (!answered.ok) return answered;
  const status = answered.value;
  if (status >= 200 && status < 300) return read(`The other program took it and answered ${status}.`);
  if (status >= 300 && status < 400) {
    return unreadable(`The other program answered ${status}, which points elsewhere. Enter the address it points to.`);
  }
  return unreadable(`The other program did not take it and answered ${status}.`);
}

/** The status that is answered. Whatever else the answer holds is not read. */
function post(url: URL, { address, family }: Judged, body: string, id: string): Promise<Reading<number>> {
  return new Promise((resolve) => {
    const request = (url.protocol === 'https:' ? guardedRequest : plainRequest)(url, {
      method: 'POST',
      headers: {
        'Content-Type': 'application/json; charset=utf-8',
        'Content-Length': Buffer.byteLength(body),
        'Idempotency-Key': id,
        'User-Agent': 'bench-and-bottle',
      },
      agent: false,
      signal: AbortSignal.timeout(PATIENCE),
      // The name was looked up and judged; looked up again it could mean another machine.
      lookup: (_, options, found) => (options.all ? found(null, [{ address, family }]) : found(null, address, family)),
    });
    request.once('response', (response) => {
      resolve(read(response.statusCode ?? 0));
      response.destroy();
    });
    request.once('error', (error) => resolve(unreadable(whyNot(error))));
    request.end(body);
  });
}

function whyNot(error: Error): string {
  const { code } = error as { code?: string };
  if (code === 'ECONNREFUSED') return 'Nothing answers at that address. Check the port.';
  if (error.name === 'AbortError' || error.name === 'TimeoutError') return 'The other program did not answer in time.';
  if (code !== undefined && /CERT|TLS|SSL|SIGNATURE|EPROTO/.test(code)) {
    return 'The other program shows no certificate that can be trusted, or speaks without encryption.';
  }
  return 'The other program could not be reached.';
}
