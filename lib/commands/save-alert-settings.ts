import 'server-only';
import type { Clock } from '@/lib/clock';
import { alertSettingsOf, putAlertSettings } from '@/lib/data/alert-settings';
import { write } from '@/lib/data/writer';
import {
  AlertSettings,
  type MailSettings,
  type WrittenAlertSettings,
  type WrittenMail,
} from '@/shared/alerts/alert-settings';
import { accept, type Outcome, refuse } from '@/shared/outcome';

export type SaveAlertSettings = {
  commandId: string;
  shopId: string;
  actor?: string;
  settings: WrittenAlertSettings;
  /** When the settings that the person had before their eyes were saved; null: there were none. */
  expecting: string | null;
};

/**
 * Save where the alerts of a shop go, and when they must be quiet.
 *
 * A password that is kept is kept for its own server and user only: with another of these it must be typed again, so that
 * nobody can have it sent elsewhere.
 *
 * Refuses  'not-found'; 'changed-meanwhile'; 'faults' when there is no password to keep
 */
export async function saveAlertSettings(input: SaveAlertSettings, clock: Clock): Promise<Outcome<{ saved: true }>> {
  const { commandId, shopId, actor, settings, expecting } = input;
  // What is kept of a command for ever must not tell a password, not even by its fingerprint.
  const body = { ...settings, mail: settings.mail && { ...settings.mail, password: kindOf(settings.mail.password) } };
  const command = { id: commandId, name: 'saveAlertSettings', shopId, body: { body, expecting }, actor };
  return write(command, clock.now(), async (rows, stamp) => {
    const shop = await rows.shop.findUnique({ where: { id: shopId }, select: { id: true } });
    if (!shop) return refuse({ code: 'not-found', what: 'shop', id: shopId });
    const before = await alertSettingsOf(shopId, rows);
    if ((before?.savedAt ?? null) !== expecting) return refuse({ code: 'changed-meanwhile', id: 'alerts' });
    const mail = withPassword(settings.mail, before?.settings.mail ?? null);
    if (mail === 'nothing-to-keep') {
      return refuse({ code: 'faults', faults: [{ path: 'password', message: TYPE_IT_AGAIN }] });
    }
    const read = AlertSettings.safeParse({ ...settings, mail });
    if (!read.success) {
      const [issue] = read.error.issues;
      const path = String(issue?.path.at(-1) ?? '');
      return refuse({ code: 'faults', faults: [{ path, message: 'This cannot be kept as it is. Write it anew.' }] });
    }
    await putAlertSettings(rows, stamp, read.data);
    return accept({ saved: true as const });
  });
}

const TYPE_IT_AGAIN = 'The password belongs to another server or user name. Type it again for this one.';

const kindOf = (password: WrittenMail['password']): string =>
  password === null ? 'none' : 'keep' in password ? 'kept' : 'new';

function withPassword(mail: WrittenMail | null, before: MailSettings | null): MailSettings | null | 'nothing-to-keep' {
  if (mail === null) return null;
  const { password, ...rest } = mail;
  if (password === null) return { ...rest, password: null };
  if ('new' in password) return { ...rest, password: password.new };
  const isSame = before !== null && before.host === mail.host && before.port === mail.port && before.user === mail.user;
  const kept = before?.password ?? null;
  // Nor may it go over a line that is less guarded than the one it was typed for.
  return kept !== null && isSame && before.guard === mail.guard ? { ...rest, password: kept } : 'nothing-to-keep';
}
