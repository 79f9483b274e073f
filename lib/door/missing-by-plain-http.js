/** What does not work in a browser that reaches the shop by plain http from another machine. */
export const MISSING_BY_PLAIN_HTTP = [
  'The camera cannot read codes.',
  'There are no passkeys.',
  'A phone keeps nothing for when there is no network.',
  'Anyone on the network can read and change what is sent, passwords too.',
];
