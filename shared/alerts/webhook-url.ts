import { type Reading, read, unreadable } from '../outcome';

/**
 * The address of a program that is told of alerts.
 *
 * Takes    what was typed, and whether the program is in the shop's own network
 * Refuses  what is no address; any but https, and http outside of the shop's own network; a user name or a password in it,
 *          which would stand in the log of every machine on the way
 */
export function readWebhookUrl(text: string, ownNetwork: boolean): Reading<URL> {
  const url = URL.canParse(text.trim()) ? new URL(text.trim()) : null;
  if (!url || url.hostname === '' || !/^https?:$/.test(url.protocol)) {
    return unreadable('Write the whole address, such as https://example.com/alerts.');
  }
  if (url.protocol === 'http:' && !ownNetwork) {
    return unreadable('Only https goes out of the shop’s own network. Write https, or tick that it is in there.');
  }
  if (url.username !== '' || url.password !== '') {
    return unreadable('Leave the user name and the password out of the address.');
  }
  return read(url);
}
