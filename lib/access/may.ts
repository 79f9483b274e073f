import type { Role } from '@/shared/access/roles';

/*
 * Who may do what. Each action, route and page names at its own door one of these; here stands which roles have it.
 */

const EVERYBODY = ['owner', 'grower', 'sprayer', 'floor', 'inspector'] as const;

/** What takes a session, with the roles that have it. */
const BY_ROLE = {
  /** Be here at all: sign out, choose a shop, read what to do in an emergency. */
  'be-here': EVERYBODY,
  /** Which benches people keep out of. */
  'see-board': ['owner', 'grower', 'sprayer', 'floor'],
  /** What was sprayed. */
  'see-records': ['owner', 'grower', 'sprayer', 'inspector'],
  /** The days ahead, mixes, recipes and the shelf. */
  'see-shop': ['owner', 'grower', 'sprayer'],
  /** Mix, spray, record it, and keep the bottles' levels true. */
  spray: ['owner', 'grower', 'sprayer'],
  /** Plan, buy, amend records, and change products, recipes, benches and programs. */
  grow: ['owner', 'grower'],
  /** Settings, links, alerts, the clock, shop files, backups, and who works here. */
  own: ['owner'],
} as const satisfies Record<string, readonly Role[]>;

/** What takes no session. */
const BY_ANYBODY = {
  /** Sign-in itself, and documents that hold nothing of a shop. */
  open: 'always',
  /** What a secret link shows: the thing itself asks for the secret. */
  link: 'once there is an owner, or on this machine alone',
  /** Answers that say nothing of a person or a record: anybody on this machine, as long as nobody else can reach it. */
  machine: 'on this machine alone',
} as const;

/** What an action, a route or a page asks of whoever comes. */
export type May = keyof typeof BY_ROLE | keyof typeof BY_ANYBODY;

export const isMay = (text: string): text is May => text in BY_ROLE || text in BY_ANYBODY;

/** True for what takes no session where it is offered. */
export const isForAnybody = (may: May): may is keyof typeof BY_ANYBODY => may in BY_ANYBODY;

/** Whether a role has something. What is for anybody is for every role, too. */
export const has = (role: Role, may: May): boolean =>
  isForAnybody(may) || (BY_ROLE[may] as readonly Role[]).includes(role);

/** The roles that have something, the one with the most first. */
export const rolesWith = (may: May): readonly Role[] => (isForAnybody(may) ? EVERYBODY : BY_ROLE[may]);
