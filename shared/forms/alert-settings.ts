import { z } from 'zod';
import {
  type AlertSettings,
  HostName,
  MAIL_GUARDS,
  MailAddress,
  type WrittenAlertSettings,
  type WrittenMail,
} from '../alerts/alert-settings';
import { readWebhookUrl } from '../alerts/webhook-url';
import type { Fault } from '../outcome';
import { textFault } from '../text/text-fault';
import { readClockTime, showClockTime } from '../time/clock-time';
import { plainTime } from '../time/time-written';
import { shopId } from './command-fields';
import type { Fields } from './rows';
import { FieldFaults, readNumber, sentForm } from './sent-fields';

const PLAIN = [
  ...(['host', 'port', 'guard', 'user', 'from', 'to', 'mailOwn'] as const),
  ...(['url', 'urlOwn', 'quietFrom', 'quietUntil'] as const),
];

/** Where alerts go as it is typed. A tick is "yes" or empty. The password stands beside it, and is kept nowhere. */
export type AlertDraft = Record<(typeof PLAIN)[number], string>;

/** The settings as their form shows them. */
export function draftOfAlerts(settings: AlertSettings | null): AlertDraft {
  const { mail, webhook, quiet } = settings ?? { mail: null, webhook: null, quiet: null };
  return {
    ...{ host: mail?.host ?? '', port: String(mail?.port ?? 587), guard: mail?.guard ?? 'starttls' },
    ...{ user: mail?.user ?? '', from: mail?.from ?? '', to: mail?.to.join(', ') ?? '' },
    ...{ mailOwn: ticked(mail?.ownNetwork), url: webhook?.url ?? '', urlOwn: ticked(webhook?.ownNetwork) },
    quietFrom: quiet ? showClockTime(quiet.from) : '',
    quietUntil: quiet ? showClockTime(quiet.until) : '',
  };
}

const ticked = (isIt: boolean | undefined): string => (isIt ? 'yes' : '');

export const alertsInFields = (fields: Fields): AlertDraft =>
  Object.fromEntries(PLAIN.map((name) => [name, fields[name] ?? ''])) as AlertDraft;

/** What was typed, and the password, which is no part of what is shown again. */
const typedOf = (fields: Fields) => ({ draft: alertsInFields(fields), password: fields.password ?? '' });

export const AlertSettingsForm = sentForm(typedOf, new RegExp(`^(${PLAIN.join('|')}|password)$`));

/** Hand a test over in every way that is set up. */
export const TryAlerts = z.strictObject({ shop: shopId() });

/** Where alerts go, as it was typed. */
export function alertsOfDraft({ draft, password }: ReturnType<typeof typedOf>): {
  settings: WrittenAlertSettings;
  faults: Fault[];
} {
  const faults = new FieldFaults();
  const settings = {
    mail: mailOf(draft, password, faults),
    webhook: webhookOf(draft, faults),
    quiet: quietOf(draft, faults),
  };
  return { settings, faults: faults.faults };
}

function mailOf(draft: AlertDraft, password: string, faults: FieldFaults): WrittenMail | null {
  const [host, user, from] = [draft.host.trim(), draft.user.trim(), draft.from.trim()];
  const to = draft.to.split(/[,;\s]+/).filter((address) => address !== '');
  if (host === '') {
    if (user + from + to.join('') + password !== '')
      faults.add('host', 'Write the mail server, or empty all of e-mail.');
    return null;
  }
  const ownNetwork = draft.mailOwn === 'yes';
  const guard = MAIL_GUARDS.find((one) => one === draft.guard) ?? 'starttls';
  if (!HostName.safeParse(host).success) faults.add('host', 'Write its name only, such as mail.example.com.');
  if (guard === 'none' && !ownNetwork)
    faults.add('guard', 'Without encryption it may go through the own network only.');
  if (!MailAddress.safeParse(from).success) faults.add('from', `Write one address, such as ${EXAMPLE}.`);
  const strange = to.find((address) => !MailAddress.safeParse(address).success);
  if (strange !== undefined) faults.add('to', `${JSON.stringify(strange)} is no address. Write it like ${EXAMPLE}.`);
  else if (to.length === 0 || to.length > MOST_ADDRESSES)
    faults.add('to', `Write 1 to ${MOST_ADDRESSES} addresses, such as ${EXAMPLE}.`);
  if (user.length > 254) faults.add('user', 'Shorten this.');
  const odd = textFault(user);
  if (odd !== null) faults.add('user', odd);
  if (user === '' && password !== '') faults.add('user', 'A password needs its user name.');
  if (password.length > 1_000) faults.add('password', 'Shorten this.');
  return {
    host,
    port: portOf(draft, faults),
    guard,
    user: user || null,
    from,
    to,
    ownNetwork,
    password: written(user, password),
  };
}

const EXAMPLE = 'ana@example.com';
const MOST_ADDRESSES = 10;

const written = (user: string, password: string): WrittenMail['password'] => {
  if (user === '') return null;
  return password === '' ? { keep: true } : { new: password };
};

function portOf({ port }: AlertDraft, faults: FieldFaults): number {
  const write = 'Write a port, such as 587.';
  const number = faults.take('port', readNumber(port, write));
  if (number !== null && Number.isInteger(number) && number >= 1 && number <= 65_535) return number;
  if (!faults.faults.some(({ path }) => path === 'port')) faults.add('port', write);
  return 587;
}

function webhookOf(draft: AlertDraft, faults: FieldFaults): WrittenAlertSettings['webhook'] {
  if (draft.url.trim() === '') return null;
  const ownNetwork = draft.urlOwn === 'yes';
  const url = faults.take('url', readWebhookUrl(draft.url, ownNetwork));
  return url && { url: url.href, ownNetwork };
}

function quietOf({ quietFrom, quietUntil }: AlertDraft, faults: FieldFaults): WrittenAlertSettings['quiet'] {
  if (quietFrom.trim() === '' && quietUntil.trim() === '') return null;
  const from = faults.take('quietFrom', readClockTime(plainTime(quietFrom.trim())));
  const until = faults.take('quietUntil', readClockTime(plainTime(quietUntil.trim())));
  if (from !== null && from === until)
    faults.add('quietUntil', 'Write another time than the first; leave both empty for never quiet.');
  return from === null || until === null ? null : { from, until };
}
