/** What somebody is in a shop. */
export const ROLES = ['owner', 'grower', 'sprayer', 'floor', 'inspector'] as const;
export type Role = (typeof ROLES)[number];

/** Each role as people say it, and what it may do. */
export const ROLE_WORDS: Readonly<Record<Role, { name: string; may: string }>> = {
  owner: { name: 'Owner', may: 'everything, and decides who works here' },
  grower: { name: 'Grower', may: 'plans, buys, changes benches, recipes and programs, and sprays' },
  sprayer: { name: 'Sprayer', may: 'mixes, sprays, records, and counts bottles' },
  floor: { name: 'Sales floor', may: 'sees which benches to keep out of, and nothing else' },
  inspector: { name: 'Inspector', may: 'reads the log and its records, and nothing else' },
};

export const isRole = (text: string): text is Role => ROLES.some((role) => role === text);
