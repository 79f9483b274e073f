/**
 * What a form asks once more when it opens a bench earlier: the benches, each in a sentence, and what was typed as the
 * reason. Or when it brings a great many `bottles`: which.
 */
export type EarlierAsked = { token: string; openings: string[]; reason: string; about?: 'bottles' };

/** The fields in which the second word is given, in whatever form. */
export const SURE_FIELDS = { token: 'earlier.token', reason: 'earlier.reason', sure: 'earlier.sure' } as const;

/** The headers in which a program gives it: the token of the refusal, and the reason in percent-encoding. */
export const SURE_HEADERS = { token: 'x-confirm-opening', reason: 'x-confirm-reason' } as const;

/** These headers with an answer; none without one. */
export const sureHeaders = (sure: { token: string; reason: string } | null): Record<string, string> =>
  sure ? { [SURE_HEADERS.token]: sure.token, [SURE_HEADERS.reason]: encodeURIComponent(sure.reason) } : {};

/** As long as the reason may be. */
export const LONGEST_SURE_REASON = 500;
