import { z } from 'zod';

/** How a connection to a mail server is guarded: from its first byte, from its greeting on, or not at all. */
export const MAIL_GUARDS = ['tls', 'starttls', 'none'] as const;

/** One line of plain text: nothing in it can begin a further header. */
const line = (longest: number) =>
  z
    .string()
    .min(1)
    .max(longest)
    .regex(/^[^\p{Cc}\p{Cs}\p{Zl}\p{Zp}]+$/u);

/** An address that can be nothing but one address. */
export const MailAddress = line(254).regex(/^[^\s@<>()[\]\\,;:"]+@[^\s@<>()[\]\\,;:"]+$/);

/** The name or the number of a machine. */
export const HostName = line(253).regex(/^([a-z0-9_-]+(\.[a-z0-9_-]+)*\.?|[0-9a-f]*:[0-9a-f:.]+)$/i);

const MINUTES_IN_DAY = 1_440;
const minuteOfDay = z
  .number()
  .int()
  .min(0)
  .max(MINUTES_IN_DAY - 1);

export const MailSettings = z.strictObject({
  host: HostName,
  port: z.number().int().min(1).max(65_535),
  guard: z.enum(MAIL_GUARDS),
  user: line(254).nullable(),
  password: z.string().min(1).max(1_000).nullable(),
  from: MailAddress,
  to: z.array(MailAddress).min(1).max(10),
  /** Whether the server may be on this machine or in the shop's own network, and only there. */
  ownNetwork: z.boolean(),
});
export type MailSettings = z.infer<typeof MailSettings>;

export const WebhookSettings = z.strictObject({
  url: line(2_000),
  /** The same for the program that is told. */
  ownNetwork: z.boolean(),
});
export type WebhookSettings = z.infer<typeof WebhookSettings>;

/** Where the alerts of a shop go, and when they must be quiet. Null: not that way, or never quiet. */
export const AlertSettings = z.strictObject({
  mail: MailSettings.nullable(),
  webhook: WebhookSettings.nullable(),
  quiet: z.strictObject({ from: minuteOfDay, until: minuteOfDay }).nullable(),
});
export type AlertSettings = z.infer<typeof AlertSettings>;

/** The ways in which an alert can go. */
export const ALERT_WAYS = ['mail', 'webhook'] as const;
export type AlertWay = (typeof ALERT_WAYS)[number];

/** The ways that are set up. */
export const waysOf = (settings: AlertSettings): AlertWay[] => ALERT_WAYS.filter((way) => settings[way] !== null);

/** The settings as a person sends them. A password is never shown, so `keep` means: the one that is there. */
export type WrittenAlertSettings = Omit<AlertSettings, 'mail'> & { mail: WrittenMail | null };
export type WrittenMail = Omit<MailSettings, 'password'> & { password: { keep: true } | { new: string } | null };
